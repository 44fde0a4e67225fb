//! Travel between the places where a linkage locks.

use crate::base::table::record;
use crate::units::Length;

record! {
    /// Travel of a linkage, or of an axle on its springs, from ride height.
    #[derive(Debug, Clone, PartialEq)]
    pub struct TravelRange {
        /// Lowest travel, negative.
        pub droop: Length,
        /// Part that ends the droop, or what it comes to.
        pub droop_end: String,
        /// Highest travel.
        pub bump: Length,
        /// Part that ends the bump, or what it comes to.
        pub bump_end: String,
    }
}
