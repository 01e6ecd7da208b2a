"""How far two pictures of a page are from each other."""

from PIL import Image, ImageChops, ImageFilter

SEEN = 20
"""How much darker or lighter a dot must be to be seen, of 255, once both are a little blurred."""
TOLERANCE = 0.001
"""The part of a page that may differ: the letters of different builds of a renderer do."""


def differs_by(one: Image.Image, other: Image.Image) -> float:
    """Return the part of a page that differs; all of it where the sizes do.

    >>> white, black = Image.new("L", (10, 10), 255), Image.new("L", (10, 10), 0)
    >>> differs_by(white, white), differs_by(white, black)
    (0.0, 1.0)
    >>> differs_by(white, Image.new("L", (10, 20), 255))
    1.0
    """
    if one.size != other.size:
        return 1.0
    soft = (image.filter(ImageFilter.BoxBlur(1)) for image in (one, other))
    histogram = ImageChops.difference(*soft).histogram()
    return sum(histogram[SEEN:]) / (one.size[0] * one.size[1])
