use crate::units::{Area, Density, Length, Mass};
use crate::{Result, valid};

/// Mass of a member from its section, length and density.
///
/// # Formula
/// `m = A L d`
///
/// # Parameters
/// - `area` — `A`, area of the section without holes
/// - `length` — `L`, length of the member; 1 m gives the mass of a metre
/// - `density` — `d`, density of the material
///
/// # Returns
/// The mass. Welds, gussets and paint come on top.
///
/// # Valid for
/// - `0 < area`
/// - `0 < length`
/// - `0 < density`
///
/// A section that stays the same along the member, cut square at both ends.
///
/// # Source
/// definition of density
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{section, units::*};
/// let rail = section::member_mass(Area::of::<mm2>(864.0), Length::of::<m>(2.8), Density::of::<kg_m3>(7850.0))?;
/// assert_eq!(format!("{:.1} kg", rail.in_::<kg>()), "19.0 kg");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn member_mass(area: Area, length: Length, density: Density) -> Result<Mass> {
    valid! {
        area: 0 < .. ; "definition: a section has metal";
        length: 0 < .. ; "definition: a member has a length";
        density: 0 < .. ; "definition: a material has mass";
    }
    Ok(area * length * density)
}
