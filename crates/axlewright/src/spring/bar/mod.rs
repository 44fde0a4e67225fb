//! Anti-roll bars and torsion bars.

mod anti_roll_bar_diameter_for_rate;
mod anti_roll_bar_rate;
mod torsion_bar_arm_rate;
mod torsion_bar_rate;
mod torsion_bar_stress;

pub use anti_roll_bar_diameter_for_rate::anti_roll_bar_diameter_for_rate;
pub use anti_roll_bar_rate::anti_roll_bar_rate;
pub use torsion_bar_arm_rate::torsion_bar_arm_rate;
pub use torsion_bar_rate::torsion_bar_rate;
pub use torsion_bar_stress::torsion_bar_stress;
