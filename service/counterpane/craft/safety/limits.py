"""Published figures that the rules work with; most were made for other goods and are borrowed yardsticks."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

FINGERTIP_MM = Fraction(5)
"""Below it a rigid hole takes no finger: CEN/TR 13387:2004, quoted by ANEC's finger entrapment report, 2012, p. 12."""

ENTRAPMENT_MM = Fraction(7)
"""From it a flexible mesh can trap a finger: the same report."""

RIGID_CLEAR_MM = Fraction(12)
"""Above it the same report counts a framed opening as clear; knitted fabric gives, so it clears nothing here."""

LOOSE_MOST_MM = Fraction(25)
"""The longest loose thread in an Australian retailer's standard for nursery goods, second-hand (garmentstech.com)."""

PULLED_LOOP_MOST_MM = Fraction(30)
"""A looped yarn pulled by hand should break within this: the same standard, second-hand."""

HEAD_LOOP_MM = Fraction(380)
"""The longest perimeter of a fixed loop on toys: EN 71-1:2005+A8:2009 cl. 5.4 c, second-hand."""

CORD_MOST_MM = Fraction(220)
"""The longest free cord on toys under 36 months: EN 71-1:2005+A8:2009 cl. 5.4 b, second-hand; EN 12586 alike."""

CORD_NOTICE_MM = Fraction(75)
"""The longest drawstring outside its channel on clothing: 16 CFR 1120.3 (3 inches)."""

CORD_THICK_LEAST_MM = Fraction("1.5")
"""The thinnest cord on toys: EN 71-1:2005+A8:2009 cl. 5.4 a, second-hand."""

RIBBON_LEAST_MM = Fraction(6)
"""The narrowest strap of a soother holder: EN 12586+A1, summarised by Tukes, the Finnish safety agency."""

CYLINDER_MM = Fraction("31.7")
"""The diameter of the small-parts cylinder: 16 CFR 1501.4."""

CYLINDER_DEEPEST_MM = Fraction("57.1")
"""Its depth at the deepest place: the same; a longer part cannot lie in it wholly."""

GRIPPED_MM = Fraction(6)
"""Up to this size a part is pulled with the smaller force: EN 71-1 cl. 8.4, second-hand."""

PULL_SMALL_N = Fraction(50)
"""The force on a part of up to 6 mm: the same."""

PULL_N = Fraction(90)
"""The force on a larger part: the same."""

TUCK_CM = Fraction(10)
"""At least so much goes under the mattress at foot and sides: VeiligheidNL and TNO, relayed by a nursery's page."""

MATTRESSES_CM: Mapping[str, Fraction] = {
    "a cot of 60 cm": Fraction(60),
    "a cot bed of 70 cm": Fraction(70),
    "a United States crib of 71 cm": Fraction(71),
}
"""Usual widths of mattresses: UK trade pages, second-hand; 16 CFR 1508.3 for the crib (28 inches)."""

UNTESTED_GSM = Fraction("88.2")
"""2.6 oz/yd2, from which a plain surface needs no burning test: 16 CFR 1610.1(d)."""

PRICKLE_MICRON = Fraction(30)
"""Coarser wool prickles: literature on textiles, from memory."""

SUPERFINE_MICRON = Fraction("17.5")
"""Merino of the comfort trial: Su et al., Br J Dermatol, 2017; the figure from summaries of the trade."""

WOOL_WASH_C = Fraction(30)
"""The warmest wash for untreated wool: a soap and detergent association, second-hand."""

HOME_WASH_C = Fraction(40)
"""A wash below it is named as mild: usual washing temperature of clothes; common practice, no source."""

HOSPITAL_WASH_C = Fraction(60)
"""What a neonatal unit washes at: a hospital's charity in Oxford, second-hand."""

FORMALDEHYDE_MG_KG: Mapping[str, Fraction] = {
    "JP": Fraction(16),
    "CN": Fraction(20),
    "EU": Fraction(75),
    "NL": Fraction(75),
    "UK": Fraction(75),
}
"""Most formaldehyde: Act 112/1973 (JP, to 24 months), GB 18401-2010 class A (CN), Regulation (EU) 2018/1513."""

AZO_MG_KG = Fraction(30)
"""Most of each listed amine: BedGgstV Anlage 1 no. 7, read; REACH Annex XVII entry 43, from memory."""

PH_LEAST = Fraction(4)
"""The least pH of goods for babies: STANDARD 100 class I, edition about 2016-17; GB 18401-2010 class A."""

PH_MOST = Fraction("7.5")
"""The greatest pH: the same."""

UNLISTED_DECORATION_PCT = Fraction(7)
"""Most of a decoration that need not be in the percentages: Regulation (EU) 1007/2011 Art. 7 and 10."""
