use crate::base::table::record;
use crate::units::{Angle, Area, Length, SecondMoment, SectionModulus, WarpingConstant};

record! {
    /// Properties of a section.
    #[derive(Debug, Clone, PartialEq)]
    pub struct SectionProperties {
        /// `closed`, `open` or `solid`; `parts` if each part twists by itself.
        pub form: String,
        /// Area of the metal.
        pub area: Area,
        /// Centroid, along y from the origin of the shape.
        pub centroid_y: Length,
        /// Centroid, along z from the origin of the shape.
        pub centroid_z: Length,
        /// Second moment about the y axis through the centroid: for loads along z.
        pub second_moment_y: SecondMoment,
        /// Second moment about the z axis through the centroid: for loads along y.
        pub second_moment_z: SecondMoment,
        /// Product of inertia about both axes; 0 if the section is symmetric about one of them.
        pub product_of_inertia: SecondMoment,
        /// Peak second moment about any axis through the centroid.
        pub major_second_moment: SecondMoment,
        /// Least second moment about any axis through the centroid: the one for buckling.
        pub minor_second_moment: SecondMoment,
        /// Angle from the y axis to the axis of the peak second moment, positive towards z.
        pub principal_angle: Angle,
        /// Bending moment about y over the stress at the worst fibre, the member free to bend sideways.
        pub section_modulus_y: SectionModulus,
        /// Bending moment about z over the stress at the worst fibre, the member free to bend sideways.
        pub section_modulus_z: SectionModulus,
        /// Plastic modulus about y, the member kept from bending sideways.
        pub plastic_modulus_y: SectionModulus,
        /// Plastic modulus about z, the member kept from bending sideways.
        pub plastic_modulus_z: SectionModulus,
        /// Least radius of gyration: the one for buckling.
        pub least_radius_of_gyration: Length,
        /// Torsion constant: torque over shear modulus and twist a length, the ends free to warp.
        pub torsion_constant: SecondMoment,
        /// Torque over the peak shear stress in a straight wall; inner corners without a radius bear more.
        pub torsion_modulus: SectionModulus,
        /// Force along y over the peak shear stress; less than the area.
        pub shear_area_y: Area,
        /// Force along z over the peak shear stress; less than the area.
        pub shear_area_z: Area,
        /// Shear centre, along y from the origin of the shape; a load elsewhere twists the member.
        pub shear_centre_y: Length,
        /// Shear centre, along z from the origin of the shape; a load elsewhere twists the member.
        pub shear_centre_z: Length,
        /// Warping constant about the shear centre; not known unless the section is open.
        pub warping_constant: WarpingConstant,
    }
}

/// A number for each axis of the section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in super::super) struct Pair {
    pub(in super::super) y: f64,
    pub(in super::super) z: f64,
}

impl Pair {
    pub(in super::super) const ZERO: Pair = Pair { y: 0.0, z: 0.0 };
    pub(in super::super) const UNKNOWN: Pair = Pair { y: f64::NAN, z: f64::NAN };
}

/// Numbers for bending of a section: areas, moments and moduli in coherent SI.
#[derive(Debug, Clone, Copy)]
pub(in super::super) struct Bending {
    pub(in super::super) area: f64,
    pub(in super::super) centroid: Pair,
    pub(in super::super) second: Pair,
    pub(in super::super) product: f64,
    pub(in super::super) elastic: Pair,
    pub(in super::super) plastic: Pair,
    /// Force along each axis over the peak shear stress.
    pub(in super::super) shear_area: Pair,
}

/// All figures of a section in coherent SI.
pub(in super::super) struct Shape {
    pub(in super::super) form: &'static str,
    pub(in super::super) bending: Bending,
    pub(in super::super) torsion: super::Torsion,
    pub(in super::super) shear_centre: Pair,
    pub(in super::super) warping: f64,
}

/// Share of a moment below which a difference of two moments is rounding.
const ROUNDING: f64 = 1e-12;

impl Bending {
    /// Peak and least second moment, and the angle from y to the axis of the peak.
    pub(in super::super) fn principal(&self) -> (f64, f64, f64) {
        let (mean, half) = ((self.second.y + self.second.z) / 2.0, (self.second.y - self.second.z) / 2.0);
        let radius = (half * half + self.product * self.product).sqrt();
        let angle = if radius <= ROUNDING * mean { 0.0 } else { (0.0 - self.product).atan2(half) / 2.0 };
        (mean + radius, mean - radius, angle)
    }
}

impl Shape {
    pub(in super::super) fn properties(self) -> SectionProperties {
        let Shape { form, bending, torsion, shear_centre, warping } = self;
        let (major, minor, angle) = bending.principal();
        SectionProperties {
            form: form.to_owned(),
            area: Area::from_si(bending.area),
            centroid_y: Length::from_si(bending.centroid.y),
            centroid_z: Length::from_si(bending.centroid.z),
            second_moment_y: SecondMoment::from_si(bending.second.y),
            second_moment_z: SecondMoment::from_si(bending.second.z),
            product_of_inertia: SecondMoment::from_si(bending.product),
            major_second_moment: SecondMoment::from_si(major),
            minor_second_moment: SecondMoment::from_si(minor),
            principal_angle: Angle::from_si(angle),
            section_modulus_y: SectionModulus::from_si(bending.elastic.y),
            section_modulus_z: SectionModulus::from_si(bending.elastic.z),
            plastic_modulus_y: SectionModulus::from_si(bending.plastic.y),
            plastic_modulus_z: SectionModulus::from_si(bending.plastic.z),
            least_radius_of_gyration: Length::from_si((minor / bending.area).sqrt()),
            torsion_constant: SecondMoment::from_si(torsion.constant),
            torsion_modulus: SectionModulus::from_si(torsion.modulus),
            shear_area_y: Area::from_si(bending.shear_area.y),
            shear_area_z: Area::from_si(bending.shear_area.z),
            shear_centre_y: Length::from_si(shear_centre.y),
            shear_centre_z: Length::from_si(shear_centre.z),
            warping_constant: WarpingConstant::from_si(warping),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_axis_of_the_peak_is_found_by_turning() {
        let turned = |bending: &Bending, angle: f64| {
            let (half, mean) =
                ((bending.second.y - bending.second.z) / 2.0, (bending.second.y + bending.second.z) / 2.0);
            mean + half * (2.0 * angle).cos() - bending.product * (2.0 * angle).sin()
        };
        for (y, z, product) in
            [(3.0, 1.0, 0.5), (1.0, 3.0, 0.5), (1.0, 3.0, -0.5), (2.0, 2.0, 0.7), (1.0, 3.0, 0.0)]
        {
            let bending = Bending {
                area: 1.0,
                centroid: Pair::ZERO,
                second: Pair { y, z },
                product,
                elastic: Pair::ZERO,
                plastic: Pair::ZERO,
                shear_area: Pair::ZERO,
            };
            let (major, minor, angle) = bending.principal();
            assert!((turned(&bending, angle) - major).abs() < 1e-12, "{y} {z} {product}");
            assert!((turned(&bending, angle + core::f64::consts::FRAC_PI_2) - minor).abs() < 1e-12);
            let best = (0..1000).map(|step| turned(&bending, f64::from(step) * 0.01)).fold(0.0, f64::max);
            assert!(best <= major + 1e-12 && best > major - 1e-3);
        }
    }
}
