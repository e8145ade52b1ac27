//! The page of maps.

fn main() {
    web::maps();
}
