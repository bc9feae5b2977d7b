"""The wire contract in marshmallow: one file a noun. It knows nothing of how anything is worked out or kept.

`Closed` schemas are requests: a member that they do not know is refused. `Open` ones describe answers, which may grow.
"""
