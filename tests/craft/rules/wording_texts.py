"""Texts by rule of wording: BAD ones that trip it, GOOD ones that only look as if."""

from __future__ import annotations

LIST = "Abbreviations\nk = knit\np = purl\nrep = repeat\nsts = stitches\n\n"
WHOLE = "Gauge: 20 sts and 40 rows = 10 cm in garter stitch.\nNeedles: 4 mm.\nCast on 8 sts.\n"
FRONT = "Size: 60 cm wide.\nMaterials: 300 g wool, 4 mm needles.\nAbbreviations: k = knit; RS = right side.\n"
BABY = "For a baby.\n"
ROWS = "Row 1 (RS): K2, *p2, k2; rep from * to end.\n"

BAD: dict[str, tuple[str, ...]] = {
    "colour-change-shows-bumps": (
        "Row 1 (RS): In MC, knit.\nRow 2: Purl.\nRow 3: Change to CC, k1, *p1, k1; rep from * to end.",
        "Row 1 (RS): With A, knit.\nRow 2: With B, knit.",
    ),
    "abbreviation-not-explained": (
        LIST + "Row 1: K1, ssk, k1.",
        "k - knit\np - purl\nyo - yarn over\n\nRow 1: K1, yo, k1, p2tog.",
        "Special abbreviations: C4F = slip 2 to cn, hold in front, k2, k2 from cn.\n\nRow 1: C4F, c4b.",
    ),
    "abbreviation-not-used": (
        LIST + "Row 1: *K2, p2 sts; rep from * to end.\nRow 2: K.\n\nkfb = knit front and back",
        "Abbreviations: k, knit; p, purl; psso, pass slipped stitch over.\nRow 1: K2, p2.",
    ),
    "abbreviation-explained-twice": (
        "k = knit\nmb = make bobble\nmb = move back\n\nRow 1: K2, mb.",
        "k = knit\nssk = slip, slip, knit\nssk = slip, slip, knit together\n\nRow 1: K2, ssk.",
    ),
    "abbreviation-explained-otherwise": (
        "k2tog = knit 3 together\n\nRow 1: K2tog, k1.",
        "RS = wrong side\nk = knit\n\nRow 1 (RS): K3.",
        "p2tog: knit 2 together\n\nRow 1: P2tog, k1.",
    ),
    "sides-not-stated": (
        WHOLE + "1st row: K4, p4.\n2nd row: Knit.\nBind off.",
        FRONT.replace("RS = right side", "p = purl") + "Cast on 8 sts.\nRow 1: K4, p4.\nRow 2: Knit.\nBind off.",
    ),
    "sides-contradict": (
        "Row 1 (RS): Knit.\nRow 2: Purl.\nRow 3 (WS): Knit.",
        "Row 1 (WS): Knit.\nRow 2 (RS): Purl.\nRow 3 (WS): Knit.\nRow 4 (WS): Knit.",
    ),
    "end-side-wrong": (
        "Row 1 (WS): Knit.\nRow 2: Purl.\nRep rows 1-2 3 times more, ending with a WS row.",
        "Row 1 (RS): Knit.\nRow 2: Purl.\nRow 3: Knit.\nRep rows 1-3 3 times more, ending after a RS row.",
    ),
    "terms-mixed": (
        "Tension: 20 sts = 10 cm in garter stitch.\nCheck your gauge.\nRow 1: Knit.",
        "Work in stockinette stitch.\nThe back is stocking stitch.\nRow 1: Knit.\nCast off.",
        "Row 1: K1, yo, k2tog.\nRow 2: Purl.\nRow 3: K1, yfwd, k2tog.",
    ),
    "row-number-skipped": ("Row 1: K4.\nRow 3: P4.", "1st row: K4.\n2nd row: P4.\n5th row: K4."),
    "row-number-doubled": (
        "Row 1: K4.\nRow 1: P4.\nRow 2: K4.",
        "Row 1: K4.\nRow 2: P4.\n© 2020 Somebody    Page 2 of 3\nRow 3: K4.\nRow 3: P4.",
        "Row 1: K4.\nRow 2: P4.\nRow 3: K4.\nRow 3: P4.\nRow 4: K4.",
    ),
    "rows-and-rounds-mixed": ("Rnd 1: K4.\nRnd 2: P4.\nRow 3: K4.", "Row 1: K4.\nRound 2: K4.\nRow 3: K4."),
    "count-not-printed": (
        "Cast on 8 sts.\nRow 1: K2tog, k6. [7 sts]\nRow 2: K2tog, k5.",
        WHOLE + "Row 1 (RS): K2tog, k6.\nRow 2: K7.\nBind off.",
    ),
    "gauge-without-texture": (
        "Tension: 22 sts and 30 rows to 10 cm square on 4 mm needles.\nRow 1: Knit.",
        "Gauge\n20 sts and 28 rows = 4 in\n\nCast on 8 sts.\nRow 1: Knit.",
        "22 sts and 30 rows = 10 cm after washing\nRow 1: Knit.",
    ),
    "gauge-without-rows": (
        "Tension: 22 sts to 10 cm over garter stitch.\nRow 1: Knit.",
        "Gauge\n- Garter: 20 sts = 10 cm\n- Lace: 18 sts and 24 rows = 10 cm\n\nRow 1: Knit.",
    ),
    "gauge-over-little": (
        "Gauge: 11 sts and 15 rows = 5 cm in garter stitch.\nRow 1: Knit.",
        "Gauge: 5 sts and 7 rows per inch in garter stitch.\nRow 1: Knit.",
    ),
    "measures-disagree": (
        "Size: 70 x 90 cm (28 x 30 in).\nRow 1: Knit.",
        "Gauge: 20 sts and 40 rows = 10 cm/3 in in garter stitch.\nRow 1: Knit.",
    ),
    "length-without-unit": (
        "Row 1: Knit.\nRep row 1 until piece measures 28 from cast-on edge.",
        "Row 1: Knit.\nWork until piece is 75 long, measured flat.",
    ),
    "needle-size-unclear": (
        "Materials: 300 g wool, a pair of No. 9 needles.\nRow 1: K4.",
        "Needles: size 6.\nRow 1: K4.",
    ),
    "repeat-extent-unclear": (
        "Row 1: K4.\nRow 2: P4.\nRep last 3 rows.",
        "Border\n\nRow 1: K4.\n\nCentre\n\nRow 1: P4.\nRepeat pattern.\n\nTop\n\nRow 1: K4.",
    ),
    "repeat-across-parts": (
        "Title\n\nEdge\n\nRow 1: K4.\nRow 2: P4.\n\nBody\n\nRow 1: P4.\nRep rows 1-2.",
        "Title\n\nRow 1: K4.\nRow 2: P4.\n\nBody\n\nRow 1: P4.\nRep rows 1 and 2.",
    ),
    "repeat-times-two-ways": (
        "Row 1: K4.\nRow 2: P4.\nRepeat rows 1 and 2 six times.",
        "Row 1: K4.\nRow 2: P4.\nRep last 2 rows twice.",
    ),
    "marker-left-over": ("Row 1: K4, place marker, k4.", "Row 1: K2, pm, k4.\nRow 2: P6.\nRow 3: K6."),
    "size-order-changes": (
        "Size: 60 (75, 70) cm.\nRow 1: Knit.",
        "Cast on 60 [72, 66, 84] sts.\nRow 1: *K2, p2; rep from * to end.",
        "Size: 27½ (35, 30¼) in.\nRow 1: Knit.",
    ),
    "yarn-without-amount": (
        "Materials\nDK wool in white\n4 mm needles\n\nRow 1: Knit.",
        "You will need: aran cotton, a pair of 5 mm needles.\nRow 1: Knit.",
    ),
    "size-not-from-gauge": (
        "Size: 30 x 36 in.\nGauge: 5 sts and 10 rows = 1 in in garter stitch.\nCast on 100 sts.\nRow 1: Knit.",
        "Finished size: 50 cm square.\nTension: 20 sts = 10 cm in garter.\nCast on 140 sts.\nRow 1: Knit.",
    ),
    "attachment-near-a-baby": (
        BABY + "Materials: 300 g wool, 4 buttons.\nRow 1: Knit.",
        BABY + "Row 1: Knit.\n\nFinishing\nAdd a fringe to both ends.",
        BABY + "Row 1: Knit.\n\nMaking up\nSew a pom-pom to each corner.",
    ),
    "bind-off-missing": (WHOLE + ROWS, FRONT + "Cast on 8 sts.\nRow 1 (RS): K8.\n"),
    "front-matter-missing": (
        FRONT + "Cast on 8 sts.\nRow 1 (RS): K8.\nBind off.",
        FRONT.replace("300 g wool, 4 mm needles", "300 g cotton") + "Gauge: 20 sts.\nCast on 8 sts.\nRow 1 (RS): K8.",
    ),
    "slip-manner-missing": (
        WHOLE + "Row 1 (RS): Sl 1, k7.\nBind off.",
        WHOLE + "Row 1 (RS): K8.\nRow 2: Slip 1, k7.\nBind off.",
    ),
    "colour-not-explained": (
        "Materials: 200 g white wool (MC).\nRow 1: With CC, k4.",
        "Materials: 200 g white wool.\nRow 1: K2 in A, k2.",
        "Colour key: A = chalk, B = rust\nRow 1: With A, k4.\nRow 2: With C, k4.",
    ),
    "units-mixed": (
        "Size: 70 cm square.\nRow 1: Knit.\nWork until piece measures 27 inches.",
        "Gauge: 20 sts and 40 rows = 4 in in garter stitch.\nRow 1: Knit.\n\nWork 60 cm in all.",
    ),
    "stitch-worded-twice": (
        WHOLE + "Row 1 (RS): Yo, k2tog, k6.\nRow 2: Yarn over, k2tog, k6.\nBind off.",
        WHOLE + "Row 1 (RS): P2tog, yo, k6.\nRow 2: Purl 2 together, yo, k6.\nBind off.",
        WHOLE + "Row 1 (RS): Rt, k6.\nRow 2: P8.\nRow 3: Right twist, k6.\nBind off.",
    ),
}
GOOD: dict[str, tuple[str, ...]] = {
    "colour-change-shows-bumps": (
        "Row 1 (RS): With A, knit.\nRow 2: Knit.\nRow 3: With B, knit.\nRow 4: Knit.",
        "Row 1 (RS): With A, knit.\nRow 2: With B, purl.",
        "Row 1 (RS): With A, *k1, p1; rep from * to end.\nRow 2: With A, *k1, p1; rep from * to end.",
        "Row 1 (RS): *K1 in A, k1 in B; rep from * to end.\nRow 2: *K1 in A, k1 in B; rep from * to end.",
    ),
    "abbreviation-not-explained": (
        "Row 1: K1, ssk, k1.",
        "k = knit\np = purl\ntog = together\n\nRow 1: K1, k2tog.",
        "Special abbreviations: C4F = slip 2 to cn, hold in front, k2, k2 from cn.\n\nRow 1: C4F, k2tog, ssk.",
        "k  knit\np  purl\nC4F/C4B  cross 4 sts\n\nRow 1: C4F, c4b.",
    ),
    "abbreviation-not-used": (
        "ssk = slip, slip, knit",
        "k = knit\nskp = sl 1, k1, psso\npsso = pass slipped stitch over\nsl = slip\n\nRow 1: K1, skp.",
    ),
    "abbreviation-explained-twice": (
        "k = knit\nc4f: see special stitches\nc4f = slip 2, k2, k2\n\nRow 1: C4F, k2.",
        LIST + "Row 1: *K2, p2; rep from * to last 2 sts, k2.",
    ),
    "abbreviation-explained-otherwise": (
        "m1 = yarn over\nk = knit\n\nRow 1: K1, m1, k1.",
        "k2tog = knit 2 stitches together as one\nssk = slip 1, slip 1, knit both\n\nRow 1: K2tog, ssk.",
        "RS = right side (the wrong side is WS)\n\nRow 1 (RS): K3.",
    ),
    "sides-not-stated": (
        "Cast on 8 sts.\nRow 1: K8.\nRow 2: P8.",
        WHOLE + "Row 1: K8.\nRow 2: K8.\nBind off.",
        WHOLE + "The right side has the ridges.\nRow 1: K8.\nRow 2: P8.\nBind off.",
    ),
    "sides-contradict": (
        "Row 1 (RS): Knit.\nRow 2 and all WS rows: Purl.\nRow 3: Knit.",
        "Row 1 (RS): Knit, do not turn.\nRow 2 (RS): Knit.",
        "Rows 1, 3 and 5 (RS): Knit.\nRows 2, 4 and 6 (WS): Purl.",
    ),
    "end-side-wrong": (
        "Row 1: Knit.\nRow 2: Purl.\nRep rows 1-2 3 times more, ending with a RS row.",
        "Row 1 (RS): Knit.\nRow 2: Purl.\nRep rows 1-2 until piece measures 60 cm, ending with a RS row.",
    ),
    "terms-mixed": (
        "Row 1: Cast off 2 sts, k to end.\nCast off.",
        "Gauge: 20 sts = 10 cm in stockinette stitch (UK stocking stitch).\nHold the yarn in even tension.\nRow 1: K.",
        "yo = yarn over (UK yfwd)\nRow 1: K1, yo, k2tog.",
        "Seed stitch all over.\nThe border is garter, the body in moss stitch\n(US seed stitch).\nRow 1: K.",
    ),
    "row-number-skipped": (
        "Row 5: K4.",
        "Row 1: K4.\nRow 2 and all WS rows: Purl.\nRow 3: P4.\nRow 5: K4.",
        "Row 1: K4.\nRow 2: P4.\n\nWork 3 rows as set.\n\nRow 6: K4.",
        "Rows 1-4: K4.\nRow 5: P4.",
    ),
    "row-number-doubled": (
        "Edge\n\nRow 1: K4.\nRow 2: P4.\n\nBody\n\nRow 1: P4.\nRow 2: K4.",
        "Row 1: K4.\nRow 2: P4.\nRep rows 1-2.\nRow 1: P4.\nRow 2: K4.",
        "Row 1 (size 1 only): K4.\nRow 1 (size 2 only): K6.",
    ),
    "rows-and-rounds-mixed": (
        "Row 1: K4.\nRow 2: P4.\nJoin to work in the round.\nRound 3: K4.",
        "Rnd 1: K4.\nRound 2: K4.",
        "Row 1: K4.\nRow 2: P4.\n\nHem\n\nRound 1: K4.\nRound 2: K4.",
    ),
    "count-not-printed": (
        "Cast on 8 sts.\nRow 1: K2tog, k6.\nRow 2: K2tog, k5.",
        "Cast on 8 sts.\nRow 1: K1, yo, k2tog, k5. (8 sts)\nRow 2: Purl.",
        "Cast on 4 sts.\nRow 1: K2, yo, k to end.\nRep row 1 until you have 9 sts.\nRow 2: K2tog, k7. (8 sts)",
        WHOLE + "Row 1 (RS): K1, yo, k7.\nRow 2: K1, k2tog, k6.\nBind off.",
    ),
    "gauge-without-texture": (
        "Tension over garter stitch: 22 sts and 44 rows to 10 cm.\nRow 1: Knit.",
        "Gauge: 22 sts and 30 rows = 10 cm in blackberry bramble.\nRow 1: Knit.",
        "Gauge is not important.\nRow 1: Knit.",
    ),
    "gauge-without-rows": (
        "22 sts, 30 rows = 10 cm in garter stitch\nRow 1: Knit.",
        "Row 1: K22 sts.\nRow 2: P22 sts.",
    ),
    "gauge-over-little": (
        "Gauge: 20 sts and 28 rows over 4 in in garter stitch.\nRow 1: Knit.",
        "Gauge: 33 sts and 45 rows = 15 cm in garter stitch.\nRow 1: Knit.",
    ),
    "measures-disagree": (
        "Size: 70 x 90 cm (27 1/2 x 35 1/2 in).\nRow 1: Knit.",
        "After 12 cm (5 in) measure the width: 10 cm = 4 in.\nRow 1: Knit.",
        "A needle of 80 cm (4 mm) holds it.\nRow 1: K4.",
    ),
    "length-without-unit": (
        "Row 1: Knit.\nRep row 1 until piece measures 28 in from cast-on edge.",
        "Row 1: Knit.\nMeasure the piece. Rep row 1 for 20 rows.",
    ),
    "needle-size-unclear": (
        "Needles: 4 mm (US 6).\nRow 1: K4.",
        "Slip 2 sts to the right needle.\nRow 1: K4.",
        "Needles: 2\nRow 1: K4.",
    ),
    "repeat-extent-unclear": (
        "Row 1: K4.\nRow 2: P4.\nRep last row.",
        "Rows 1-4: K4.\nRep last row.",
        "Cast on 4 sts.\nRow 1: K4.\nBind off.\n\nCast on 4 sts.\nRow 1: P4.\nRow 2: K4.\nRep last 2 rows.",
        "Row 1: K4.\nRow 2: P4.\nRepeat pattern.",
    ),
    "repeat-across-parts": (
        "Edge\n\nRow 1: K4.\nRow 2: P4.\nRep rows 1-2.\n\nBody\n\nRow 1: P4.\nRow 2: K4.\nRep rows 1-2.",
        "Row 1: K4.\nRep row 1.",
    ),
    "repeat-times-two-ways": (
        "Row 1: K4.\nRow 2: P4.\nRep rows 1-2 six times more.",
        "Row 1: K4.\nRow 2: P4.\nRep rows 1-2 for a total of 6 times.",
        "Row 1: [K1, p1] 6 times.\nRep row 1.",
    ),
    "marker-left-over": (
        "Row 1: K4, pm, k4.\nRow 2: K to marker, sm, k to end.",
        "Row 1: K4, pm, k4.\nRow 2: P8.\nBind off, removing marker.",
    ),
    "size-order-changes": (
        "Cast on 60 (60, 72) sts.\nRow 1: *K2, p2; rep from * to end.",
        "Row 1: K2 (p2, k2).\nRow 2: [K1, p1] 3 times.",
        "Cast on 84 (72, 60) sts.\nRow 1: *K2, p2; rep from * to end.",
        "Size: ¼ (½, ¾) in, 27½ (28, 30¼) in.\nRow 1: Knit.",
    ),
    "yarn-without-amount": (
        "Materials\nDK wool in white, 4 x 50 g balls\n4 mm needles\n\nRow 1: Knit.",
        "Materials: two balls of wool.\nRow 1: Knit.",
        "Row 1: Knit with the wool held double.",
    ),
    "size-not-from-gauge": (
        "Size: 70 x 90 cm.\nGauge: 20 sts = 10 cm in garter.\nCast on 150 sts.\nRow 1: Knit.",
        "Size: 90 cm square.\nGauge: 20 sts = 10 cm in garter.\nCast on 40 sts.\nRow 1: K.\nSew the strips together.",
        "Size: 70 x 90 cm.\nCast on 10 sts.\nRow 1: Knit.",
    ),
    "attachment-near-a-baby": (
        "Materials: 300 g wool, 4 buttons.\nRow 1: Knit.",
        BABY + "Materials: 300 g wool.\nRow 1: Knit.\n\nFinishing\nDo not add ribbons or buttons.",
        BABY + "Row 1: Work the ribbon pattern.\nRow 2: Knit.",
    ),
    "bind-off-missing": (
        "Cast on 8 sts.\nRow 1: K8.",
        WHOLE + ROWS + "Row 2: Bind off all sts.",
        WHOLE + ROWS + "BO loosely.",
    ),
    "front-matter-missing": (FRONT + "Gauge: 20 sts = 10 cm in garter.\nCast on 8 sts.\nRow 1: K8.", WHOLE + ROWS),
    "slip-manner-missing": (
        WHOLE + "Slip all sts purlwise.\nRow 1 (RS): Sl 1, k7.\nBind off.",
        WHOLE + "Row 1 (RS): Sl 1, k1, psso, k6.\nBind off.",
        "Row 1: Sl 1, k7.",
    ),
    "colour-not-explained": (
        "Row 1: With A, k4.",
        "Materials: 200 g white (A), 100 g blue (B).\nRow 1: With A, k4.\nRow 2: With B, p4.",
        "Materials: 200 g white wool.\nRow 1: With a larger needle, k4.",
    ),
    "units-mixed": (
        "Size: 70 cm (27 1/2 in) square.\nRow 1: K2 in next st, k1.\nWork until piece measures 60 cm (24 in).",
        "Size: 27 in square.\nRow 1: Knit.\nA circular needle of 80 cm holds it.",
    ),
    "stitch-worded-twice": (
        WHOLE + "Row 1 (RS): K2 tog, yo, k6.\nRow 2: K2tog, yo, k6.\nBind off.",
        WHOLE + "Row 1 (RS): Knit.\nRow 2: K8.\nBind off.",
        "Row 1: K2tog, k6.\nRow 2: Knit 2 together, k5.",
    ),
}
