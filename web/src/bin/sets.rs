//! The page of sets.

fn main() {
    web::sets();
}
