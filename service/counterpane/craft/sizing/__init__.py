"""Sizes in stitches, rows and centimetres: what fits, what is nearest, what would make it fit. Exact throughout.

`classes` holds counts that work and those nearest a width; `bands` what stacked bands share and what corrects them;
`panels` sums of panels side by side; `takeup` even changes of the count; `lengths` rows and their sides; `swatch` gauge
and what it leaves open. Yarn and time are not here.
"""
