//! The page of drills.

fn main() {
    web::drills();
}
