//! The page where a flight is flown and demonstrations are shown.

fn main() {
    web::fly();
}
