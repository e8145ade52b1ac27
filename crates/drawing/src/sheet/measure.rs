//! How wide words are in the font that sheets are set in.
//!
//! A drawing cannot measure a font, so the widths of the letters stand here, read from Atkinson
//! Hyperlegible Next (`static/fonts`) at weights 400 and 700. Kerning is left out: it makes words
//! narrower by a hundredth or two, so what is computed here is on the safe side.

/// Thousandths of the font's size, for the characters from space to tilde.
const PLAIN: [u16; 95] = [
    280, 286, 301, 651, 592, 919, 731, 160, 299, 299, 485, 606, 210, 362, 210, 387, 648, 407, 548,
    576, 614, 588, 598, 510, 615, 595, 210, 210, 553, 628, 553, 480, 778, 626, 613, 645, 669, 569,
    552, 694, 694, 392, 512, 631, 541, 824, 693, 714, 592, 724, 614, 592, 558, 690, 593, 856, 623,
    575, 607, 317, 387, 344, 552, 372, 243, 525, 566, 485, 564, 538, 314, 558, 550, 252, 245, 492,
    262, 845, 550, 548, 566, 574, 349, 471, 326, 540, 461, 684, 481, 449, 460, 344, 237, 344, 555,
];
const BOLD: [u16; 95] = [
    312, 303, 390, 765, 610, 969, 725, 210, 335, 335, 485, 595, 271, 373, 272, 440, 659, 440, 579,
    600, 624, 607, 626, 537, 624, 571, 272, 272, 569, 612, 569, 547, 781, 678, 643, 658, 688, 597,
    566, 718, 701, 424, 561, 663, 552, 858, 717, 746, 629, 756, 650, 610, 607, 686, 644, 886, 685,
    650, 618, 340, 440, 344, 582, 400, 288, 552, 596, 510, 596, 563, 365, 593, 571, 300, 259, 555,
    318, 882, 571, 576, 596, 599, 376, 508, 376, 567, 530, 740, 539, 521, 505, 381, 254, 381, 537,
];
/// The signs that sheets use beside them: plain and bold.
const SIGNS: [(char, u16, u16); 13] = [
    ('\u{a0}', 280, 312),
    ('°', 352, 394),
    ('–', 504, 501),
    ('—', 824, 832),
    ('−', 606, 595),
    ('×', 532, 536),
    ('±', 579, 611),
    ('½', 820, 852),
    ('’', 236, 269),
    ('“', 399, 479),
    ('”', 399, 479),
    ('·', 240, 294),
    ('…', 670, 780),
];
/// Any other: as wide as the wider small letters.
const OTHER: (u16, u16) = (570, 600);

/// About how wide words are, in the units of `size` (the em); bold from weight 600 on.
pub fn width(words: &str, size: f64, weight: u16) -> f64 {
    let bold = weight >= 600;
    let of = |(plain, heavy): (u16, u16)| f64::from(if bold { heavy } else { plain });
    let thousandths: f64 = (words.chars())
        .map(|letter| {
            let place = (letter as usize).wrapping_sub(' ' as usize);
            let known = PLAIN.get(place).zip(BOLD.get(place));
            let sign = SIGNS.iter().find(|(sign, ..)| *sign == letter);
            match (known, sign) {
                (Some((&plain, &heavy)), _) => of((plain, heavy)),
                (None, Some(&(_, plain, heavy))) => of((plain, heavy)),
                (None, None) => of(OTHER),
            }
        })
        .sum();
    thousandths * size / 1000.0
}
