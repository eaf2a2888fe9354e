//! The univariate reference data of the National Institute of Standards and Technology,
//! Statistical Reference Datasets, itl.nist.gov/div898/strd: public domain.

/// One data set with its certified values.
pub(crate) struct Reference {
    pub(crate) name: &'static str,
    pub(crate) values: Vec<f64>,
    pub(crate) mean: f64,
    pub(crate) deviation: f64,
    /// Digits of the mean, and of the standard deviation, that numbers of 53 bits allow. Values
    /// with many digits in common are rounded in their last ones, in which all of their spread
    /// lies.
    pub(crate) digits: (i32, i32),
}

/// All of them, with the certified values to the digits that are printed.
pub(crate) fn all() -> Vec<Reference> {
    let whole = |values: &[i16]| -> Vec<f64> { values.iter().copied().map(f64::from).collect() };
    let with = |values: &[i16], before: i32, parts: f64| -> Vec<f64> {
        let value = |last: &i16| f64::from(before + i32::from(*last)) / parts;
        values.iter().map(value).collect()
    };
    let sets = [
        ("Lew", whole(&LEW), -177.435, 277.332_168_044_316, (15, 15)),
        (
            "Lottery",
            whole(&LOTTERY),
            518.958_715_596_330,
            291.699_727_470_969,
            (15, 15),
        ),
        (
            "Mavro",
            with(&MAVRO, 200_000, 1e5),
            2.001_856,
            0.000_429_123_454_003_053,
            (15, 12),
        ),
        (
            "Michelso",
            with(&MICHELSON, 29_900, 1e2),
            299.8524,
            0.079_010_547_819_051_8,
            (15, 13),
        ),
        (
            "PiDigits",
            pi_digits(),
            4.5348,
            2.867_339_060_288_71,
            (15, 15),
        ),
        (
            "NumAcc1",
            vec![10_000_001.0, 10_000_003.0, 10_000_002.0],
            10_000_002.0,
            1.0,
            (15, 15),
        ),
        ("NumAcc2", alternating(1.2, 1.1, 1.3), 1.2, 0.1, (15, 14)),
        (
            "NumAcc3",
            alternating(1_000_000.2, 1_000_000.1, 1_000_000.3),
            1_000_000.2,
            0.1,
            (15, 9),
        ),
        (
            "NumAcc4",
            alternating(10_000_000.2, 10_000_000.1, 10_000_000.3),
            10_000_000.2,
            0.1,
            (15, 8),
        ),
    ];
    let reference = |(name, values, mean, deviation, digits): (_, Vec<f64>, _, _, _)| Reference {
        name,
        values,
        mean,
        deviation,
        digits,
    };
    sets.into_iter().map(reference).collect()
}

/// The rule of NumAcc2 to NumAcc4: a first value, then 500 times two others.
fn alternating(first: f64, low: f64, high: f64) -> Vec<f64> {
    let mut values = vec![first];
    values.extend([low, high].repeat(500));
    values
}

/// The first 5000 digits of π but for one: the certified values are those of a list that has a 3
/// where π has its 957th digit, an 8.
fn pi_digits() -> Vec<f64> {
    let mut digits = digits_of_pi(5000);
    digits[956] = 3.0;
    digits
}

/// The first digits of π, by the spigot of S. Rabinowitz and S. Wagon, The American Mathematical
/// Monthly 102 (1995), 195–203.
fn digits_of_pi(count: usize) -> Vec<f64> {
    let length = count * 10 / 3 + 16;
    let mut rests = vec![2_usize; length];
    let mut digits: Vec<usize> = Vec::new();
    // A few more, as a ten may still be carried to the last one.
    while digits.len() < count + 5 {
        let mut carry = 0;
        for place in (1..length).rev() {
            let number = rests[place] * 10 + carry;
            rests[place] = number % (2 * place + 1);
            carry = number / (2 * place + 1) * place;
        }
        let number = rests[0] * 10 + carry;
        rests[0] = number % 10;
        digits.push(number / 10);
        // A ten is carried to the digits before.
        for place in (1..digits.len()).rev() {
            if digits[place] < 10 {
                break;
            }
            digits[place] -= 10;
            digits[place - 1] += 1;
        }
    }
    let digits = &digits[..count];
    digits.iter().map(|&digit| digit as f64).collect()
}

/// Deflections of a beam.
const LEW: [i16; 200] = [
    -213, -564, -35, -15, 141, 115, -420, -360, 203, -338, -431, 194, -220, -513, 154, -125, -559,
    92, -21, -579, -52, 99, -543, -175, 162, -457, -346, 204, -300, -474, 164, -107, -572, -8, 83,
    -541, -224, 180, -420, -374, 201, -236, -531, 83, 27, -564, -112, 131, -507, -254, 199, -311,
    -495, 143, -46, -579, -90, 136, -472, -338, 202, -287, -477, 169, -124, -568, 17, 48, -568,
    -135, 162, -430, -422, 172, -74, -577, -13, 92, -534, -243, 194, -355, -465, 156, -81, -578,
    -64, 139, -449, -384, 193, -198, -538, 110, -44, -577, -6, 66, -552, -164, 161, -460, -344,
    205, -281, -504, 134, -28, -576, -118, 156, -437, -381, 200, -220, -540, 83, 11, -568, -160,
    172, -414, -408, 188, -125, -572, -32, 139, -492, -321, 205, -262, -504, 142, -83, -574, 0, 48,
    -571, -106, 137, -501, -266, 190, -391, -406, 194, -186, -553, 83, -13, -577, -49, 103, -515,
    -280, 201, 300, -506, 131, -45, -578, -80, 138, -462, -361, 201, -211, -554, 32, 74, -533,
    -235, 187, -372, -442, 182, -147, -566, 25, 68, -535, -244, 194, -351, -463, 174, -125, -570,
    15, 72, -550, -190, 172, -424, -385, 198, -218, -536, 96,
];

/// Numbers drawn in a lottery.
const LOTTERY: [i16; 218] = [
    162, 671, 933, 414, 788, 730, 817, 33, 536, 875, 670, 236, 473, 167, 877, 980, 316, 950, 456,
    92, 517, 557, 956, 954, 104, 178, 794, 278, 147, 773, 437, 435, 502, 610, 582, 780, 689, 562,
    964, 791, 28, 97, 848, 281, 858, 538, 660, 972, 671, 613, 867, 448, 738, 966, 139, 636, 847,
    659, 754, 243, 122, 455, 195, 968, 793, 59, 730, 361, 574, 522, 97, 762, 431, 158, 429, 414,
    22, 629, 788, 999, 187, 215, 810, 782, 47, 34, 108, 986, 25, 644, 829, 630, 315, 567, 919, 331,
    207, 412, 242, 607, 668, 944, 749, 168, 864, 442, 533, 805, 372, 63, 458, 777, 416, 340, 436,
    140, 919, 350, 510, 572, 905, 900, 85, 389, 473, 758, 444, 169, 625, 692, 140, 897, 672, 288,
    312, 860, 724, 226, 884, 508, 976, 741, 476, 417, 831, 15, 318, 432, 241, 114, 799, 955, 833,
    358, 935, 146, 630, 830, 440, 642, 356, 373, 271, 715, 367, 393, 190, 669, 8, 861, 108, 795,
    269, 590, 326, 866, 64, 523, 862, 840, 219, 382, 998, 4, 628, 305, 747, 247, 34, 747, 729, 645,
    856, 974, 24, 568, 24, 694, 608, 480, 410, 729, 947, 293, 53, 930, 223, 203, 677, 227, 62, 455,
    387, 318, 562, 242, 428, 968,
];

/// Transmittance of a filter, 2 and so many hundred-thousandths.
const MAVRO: [i16; 50] = [
    180, 170, 180, 190, 180, 170, 150, 140, 150, 150, 170, 180, 180, 190, 190, 210, 200, 160, 140,
    130, 130, 150, 150, 160, 150, 140, 130, 140, 150, 140, 150, 160, 150, 160, 190, 200, 200, 210,
    220, 230, 240, 250, 270, 260, 260, 260, 270, 260, 250, 240,
];

/// The speed of light as measured in 1879, 299 Mm/s and so many hundredths.
const MICHELSON: [i16; 100] = [
    85, 74, 90, 107, 93, 85, 95, 98, 98, 88, 100, 98, 93, 65, 76, 81, 100, 100, 96, 96, 96, 94, 96,
    94, 88, 80, 85, 88, 90, 84, 83, 79, 81, 88, 88, 83, 80, 79, 76, 80, 88, 88, 88, 86, 72, 72, 62,
    86, 97, 95, 88, 91, 85, 87, 84, 84, 85, 84, 84, 84, 89, 81, 81, 82, 80, 77, 76, 74, 75, 76, 91,
    92, 89, 86, 88, 72, 84, 85, 85, 78, 89, 84, 78, 81, 76, 81, 79, 81, 82, 85, 87, 87, 81, 74, 81,
    94, 95, 80, 81, 87,
];
