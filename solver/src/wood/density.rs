//! How heavy wood is at a moisture content.

/// Moisture content at which wood of the handbook begins to shrink, percent.
const FIBRE_SATURATION: f64 = 30.0;

/// Density of wood in kg/m³ at a moisture content of M percent.
///
/// With the basic specific gravity G_b (ovendry mass over green volume) and the volumetric shrinkage
/// S₀ in percent from green to ovendry: S_x = S₀·(1 − M/30), G_x = G_b/(1 − S_x/100) and
/// ρ = 1000·G_x·(1 + M/100); from 30 % on nothing shrinks any more. Source: USDA Forest Products
/// Laboratory, *Wood Handbook*, FPL-GTR-190, chapter 4 (recalled).
///
/// ```
/// // Incense-cedar, 0.35 and 7.7 %, at 12 %.
/// assert!((solver::wood::density(0.35, 7.7, 12.0) - 411.0).abs() < 0.05);
/// ```
#[must_use]
pub fn density(specific_gravity: f64, volumetric_shrinkage: f64, moisture: f64) -> f64 {
    let shrunk = volumetric_shrinkage * (1.0 - moisture / FIBRE_SATURATION).max(0.0);
    1000.0 * specific_gravity / (1.0 - shrunk / 100.0) * (1.0 + moisture / 100.0)
}
