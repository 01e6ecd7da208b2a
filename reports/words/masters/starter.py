"""A formula to begin with, as a maker would write it, every key explained.

Guarantees: a book that has the materials takes it as it stands. Refuses: to be more than a
beginning; the proportions are common practice, without a source, and said to be.
"""

import json

PROPORTION = "One part of oil to fifteen of strong spirit is common practice, no source."
_TEMPLATE = """\
# A formula to begin with; change what you do otherwise. {proportion}
# Load it with: pottle formula load {file}
# A line that begins with # is a remark; take the # away from a key to use it.

code = {code}            # its short name at the prompt
version = 1              # write a change as the next version; old batches keep theirs
product = {product}
kind = "essence"         # essence, washed-essence, gum-emulsion, blend, macerate, base-syrup, syrup
basis = "240mL"          # what the amounts below are for; a batch is scaled from it
wanted-clarity = "clear" # the worst grade that passes: bright, clear, hazy, ...
# yield-min = "85%"      # below it a reason is asked for
# best-before-days = 540 # counted from the finish; oils and inputs may end it sooner
# caution = "Not to be drunk undiluted."

[[line]]                 # one for each thing that goes in
material = {oil}
amount = "15mL"
tolerance = "2%"         # how far off it may be
{clarified}
[[line]]
material = {spirit}
amount = "225mL"
tolerance = "2%"

[[step]]                 # what is done, in order, with the limits you hold yourself to
verb = "rest"
rest-for = "macerate"    # macerate, settle, chill or warm
words = "Shake it now and then."
# at-least = "24h"
# at-most = "7d"

[[step]]
verb = "filter"
words = "Return the first runnings."
# pore-max = "25"        # in µm

[[step]]
verb = "look"
looked-at = "neat"       # neat, in-syrup or as-poured
words = "In daylight against black."
worst = "clear"

[[step]]
verb = "finish"
"""
_CLARIFIED = """
[[line]]
material = {clarifier}
amount = "7.5g"
tolerance = "10%"
"""


def starter_formula(code: str, product: str, oil: str, spirit: str, clarifier: str | None) -> str:
    """Return the text of a file.

    Args:
        code: The formula's short name.
        product: The name of what it makes.
        oil: Short name of the oil.
        spirit: Short name of the spirit.
        clarifier: Short name of what clears it; None for nothing.
    """
    cleared = _CLARIFIED.format(clarifier=json.dumps(clarifier)) if clarifier else ""
    return _TEMPLATE.format(
        proportion=PROPORTION,
        file=f"{code}.toml",
        code=json.dumps(code),
        product=json.dumps(product, ensure_ascii=False),
        oil=json.dumps(oil),
        spirit=json.dumps(spirit),
        clarified=cleared,
    )
