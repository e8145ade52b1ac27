//! The page of numbers.

fn main() {
    web::numbers();
}
