"""The main path as commands: set up, receive, make, bottle, send, and a complaint."""

SET_UP: tuple[tuple[str, str], ...] = (
    ("", 'init --house "Wren & Co" --currency EUR'),
    ("", 'person add AB "Anna Bell"'),
    (
        "",
        'material add orange-oil --name "Sweet orange oil" --kind oil --how expressed '
        "--density 0.845 --allergens none",
    ),
    ("", 'material add spirit --name "Neutral spirit" --kind ethanol --abv 96 --allergens none'),
    ("", 'material add carb --name "Light magnesium carbonate" --kind clarifier'),
    ("", 'material add sugar --name "White sugar" --kind sugar --allergens none'),
    ("", 'material add water --name "Water" --kind water'),
    ("", 'material add b250 --name "Bottle 250 mL" --kind bottle'),
    ("", 'material add cap --name "Cap" --kind closure'),
)
DELIVERIES: tuple[tuple[str, str], ...] = (
    (
        "oil",
        'receive orange-oil 500mL --from "Harbour Oils" --their-lot C7731 --cost 48.00 '
        "--best-before 2099-06-30",
    ),
    ("spirit", "receive spirit 5L"),
    ("carb", "receive carb 500g"),
    ("sugar", "receive sugar 25kg"),
    ("water", "receive water 100L"),
    ("bottles", "receive b250 100"),
    ("caps", "receive cap 100 each"),
)
ESSENCE: tuple[tuple[str, str], ...] = (
    ("essence", 'start --product "Orange essence" --kind essence --target 480mL'),
    ("", "add {essence} {oil} 30mL"),
    ("", "add {essence} {carb} 15g"),
    ("", "add {essence} {spirit} 420mL"),
    ("", "rest {essence} --for macerate"),
    ("", "rest {essence} --end"),
    (
        "",
        "filter {essence} --medium paper --pore 20 --in 445mL --out 430mL --vacuum 40kPa",
    ),
    ("", "makeup {essence} 450mL --with {spirit}"),
    ("", "look {essence} hazy --ntu 9.4 --of neat"),
    ("", "finish {essence} 448mL"),
    ("", "release {essence}"),
)
SYRUP: tuple[tuple[str, str], ...] = (
    ("syrup", 'start --product "Orange syrup" --kind syrup --target 4L'),
    ("", "add {syrup} {sugar} 2.4kg"),
    ("", "add {syrup} {water} 2.4L"),
    ("", "add {syrup} {essence} 30mL"),
    ("", "look {syrup} cloudy --of neat"),
    ("", "finish {syrup} 3.8L"),
)
BOTTLES: tuple[tuple[str, str], ...] = (
    ("packed", "bottle {syrup} 15 x 250mL --bottles {bottles} --caps {caps}"),
    ("", "release {packed}"),
    ("", "label {packed} --out labels.pdf"),
    ("", 'send {packed} 6 --to "Bridge Street Stall"'),
    ("", 'complain {packed} cloudy --from "Bridge Street Stall"'),
)
LOOK_UP: tuple[tuple[str, str], ...] = (
    ("", "trace {packed}"),
    ("", "record {essence} --out record.pdf"),
    ("", "verify"),
    ("", "stock"),
    ("", "lot {essence}"),
    ("", "journal --last 3"),
)
MENDED: tuple[tuple[str, str], ...] = (
    ("", 'correct 18 --set amount=32mL --because "misread the cylinder"'),
    ("", 'strike 22 --because "wrong lot"'),
    ("", "lot {essence}"),
    ("", "verify"),
)
MAIN_PATH = (*SET_UP, *DELIVERIES, *ESSENCE, *SYRUP, *BOTTLES, *LOOK_UP, *MENDED)
LISTS = ("trace", "stock", "lot", "journal", "complain")
"""Commands that answer with a list as long as it takes."""
