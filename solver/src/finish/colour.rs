//! Colours as a screen shows them.

/// A colour of sRGB (IEC 61966-2-1), 8 bits a channel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Colour {
    /// Red, green and blue.
    channels: [u8; 3],
}

impl Colour {
    /// From red, green and blue.
    #[must_use]
    pub const fn new(red: u8, green: u8, blue: u8) -> Self {
        Self {
            channels: [red, green, blue],
        }
    }

    /// Reads a number sign with six hexadecimal digits, as style sheets write a colour.
    ///
    /// ```
    /// use solver::Colour;
    /// assert_eq!(Colour::read("#1f4E79"), Some(Colour::new(0x1f, 0x4e, 0x79)));
    /// assert_eq!(Colour::read("blue"), None);
    /// ```
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let digits = text.strip_prefix('#')?;
        if digits.len() != 6 || !digits.bytes().all(|digit| digit.is_ascii_hexdigit()) {
            return None;
        }
        let channel = |at: usize| u8::from_str_radix(digits.get(at..at + 2)?, 16).ok();
        Some(Self::new(channel(0)?, channel(2)?, channel(4)?))
    }

    /// As style sheets write it.
    ///
    /// ```
    /// assert_eq!(solver::Colour::new(255, 0, 16).text(), "#ff0010");
    /// ```
    #[must_use]
    pub fn text(self) -> String {
        let [red, green, blue] = self.channels;
        format!("#{red:02x}{green:02x}{blue:02x}")
    }

    /// The channels as shares of linear light, 0 to 1, that can be added and scaled: c/12.92 up to
    /// c = 0.04045, else ((c + 0.055)/1.055)^2.4 (IEC 61966-2-1, section 5.2).
    #[must_use]
    pub fn linear(self) -> [f32; 3] {
        self.channels.map(|channel| {
            let share = f64::from(channel) / 255.0;
            let light = if share <= 0.040_45 {
                share / 12.92
            } else {
                libm::pow((share + 0.055) / 1.055, 2.4)
            };
            light as f32
        })
    }

    /// Whether black letters are read on it more easily than white ones: where its relative luminance
    /// is above 0.179, at which both have the same contrast (W3C, WCAG 2.2, *contrast ratio*).
    ///
    /// ```
    /// use solver::Colour;
    /// assert!(Colour::new(250, 220, 90).is_light() && !Colour::new(30, 60, 90).is_light());
    /// ```
    #[must_use]
    pub fn is_light(self) -> bool {
        let [red, green, blue] = self.linear();
        0.2126 * red + 0.7152 * green + 0.0722 * blue > 0.179
    }
}
