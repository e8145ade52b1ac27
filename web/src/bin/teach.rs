//! The same page with demonstrations, the making of them, links and films.

fn main() {
    web::teach();
}
