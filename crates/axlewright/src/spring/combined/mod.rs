//! Springs in parallel and in series, bump stops, air springs, and the energy that a spring holds.

mod air_spring_rate;
mod bump_stop;
mod parallel_rate;
mod series_crossover;
mod series_rate;
mod stack;
mod stored_energy;

pub use air_spring_rate::air_spring_rate;
pub use bump_stop::{BumpStop, StopPoint, Stopped};
pub use parallel_rate::parallel_rate;
pub use series_crossover::{SeriesCrossover, series_crossover};
pub use series_rate::series_rate;
pub use stack::{FirstClosed, HeldStack, LoadedStack, Stack, StackedSpring};
pub use stored_energy::stored_energy;
