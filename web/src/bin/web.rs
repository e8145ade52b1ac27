//! The page where a flight is flown.

fn main() {
    web::fly();
}
