//! Makes the kernels and models of the Python module.

fn main() -> Result<(), Box<dyn std::error::Error>> {
    surface::build(surface::native::source)
}
