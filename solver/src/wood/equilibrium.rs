//! The moisture content at which wood comes to rest in air.

/// The equilibrium moisture content of wood in percent, from the temperature of the air in °C
/// and its relative humidity as a share from 0 to 1.
///
/// With T in °C and H as a share,
///
/// EMC = (1800/W)·[KH/(1 − KH) + (K₁KH + 2K₁K₂K²H²)/(1 + K₁KH + K₁K₂K²H²)]
///
/// - W = 349 + 1.29·T + 0.0135·T²
/// - K = 0.805 + 0.000736·T − 0.00000273·T²
/// - K₁ = 6.27 − 0.00938·T − 0.000303·T²
/// - K₂ = 1.91 + 0.0407·T − 0.000293·T²
///
/// Source: USDA Forest Products Laboratory, *Wood Handbook*, FPL-GTR-190, Eq. 4-5; it holds for
/// most species alike. Meant for −10 to 60 °C and a share up to 0.95, where KH stays below 1.
///
/// ```
/// use solver::equilibrium_moisture;
/// assert!((equilibrium_moisture(20.0, 0.42) - 8.0).abs() < 0.1);
/// ```
#[must_use]
pub fn equilibrium_moisture(celsius: f64, humidity: f64) -> f64 {
    let polynomial =
        |constant, linear, square| constant + linear * celsius + square * (celsius * celsius);
    let w = polynomial(349.0, 1.29, 0.0135);
    let k = polynomial(0.805, 0.000_736, -0.000_002_73);
    let k1 = polynomial(6.27, -0.009_38, -0.000_303);
    let k2 = polynomial(1.91, 0.0407, -0.000_293);
    let bound = k * humidity;
    let (first, second) = (k1 * bound, k1 * k2 * (bound * bound));
    let layers = bound / (1.0 - bound) + (first + 2.0 * second) / (1.0 + first + second);
    1800.0 / w * layers
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn dry_air_dries_wood_through() {
        assert_eq!(equilibrium_moisture(20.0, 0.0), 0.0);
    }

    proptest! {
        #[test]
        fn damper_air_makes_damper_wood(celsius in -10.0_f64..60.0, a in 0.0_f64..0.95, b in 0.0_f64..0.95) {
            let (dry, damp) = (a.min(b), a.max(b));
            prop_assert!(equilibrium_moisture(celsius, dry) <= equilibrium_moisture(celsius, damp));
            prop_assert!((0.0..30.0).contains(&equilibrium_moisture(celsius, damp)));
        }
    }
}
