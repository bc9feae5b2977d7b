"""What a blanket is made of and how it is looked after: fibres by mass, care labels, washing conflicts, finishing.

Names of fibres, care values and rules of markets are facts and are passed in. Whether a piece may be sold anywhere is
deliberately not decided here.
"""
