//! bedplate.
fn main() {}
