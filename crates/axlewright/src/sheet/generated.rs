use crate::base::section::Section;

/// Every system that has a section of the sheet, lowest layer first.
pub(super) static SECTIONS: &[(&str, &Section)] = &[
    ("air", &crate::air::SHEET),
    ("tyre", &crate::tyre::SHEET),
    ("spring", &crate::spring::SHEET),
    ("engine", &crate::engine::SHEET),
    ("mass", &crate::mass::SHEET),
    ("driveline", &crate::driveline::SHEET),
    ("cooling", &crate::cooling::SHEET),
];
