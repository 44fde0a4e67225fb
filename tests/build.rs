//! Makes the lists of functions and models through which the reference rows run.

fn main() -> Result<(), Box<dyn std::error::Error>> {
    surface::build(surface::rows::source)
}
