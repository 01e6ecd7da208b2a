"""A recall in which all happens: bottles with people named and not, calls, what came back."""

from ledger.service.recall.standing import Recall, recall_of
from tests.keeper import Keeper
from tests.path import Lots

BAR, INN = "Bridge Street Stall", "Harbour Inn"


def recalled(keeper: Keeper, lots: Lots) -> Recall:
    """Return the recall of the oil, with something gone in every way there is."""
    keeper.do("house", phone="01 555 0000", address="3 Pretend Lane, Madeupton", country="IE")
    keeper.do(
        "party", name=INN, phone="01 555 0101", email="inn@example.org",
        address="9 Quay Road", words="ask for Maeve",
    )  # fmt: skip
    send = {"lot": lots.packed}
    keeper.do("send", **send, amount="2", moved_as="on-return", party=INN, document="note DN-7")
    keeper.do("send", **send, amount="1", moved_as="sale", party="market")
    keeper.do("send", **send, amount="1", moved_as="sample", party="Fair Office")
    keeper.do("send", **send, amount="1", moved_as="breakage")
    keeper.do("send", **send, amount="1", moved_as="retained")
    keeper.do("recall", lot=lots.oil, because="throws haze")
    keeper.do("contact", lot=lots.oil, party=INN, reached="left-word", words="rang twice")
    keeper.do("contact", lot=lots.oil, party=BAR, reached="spoken", still_there="4")
    keeper.do("send", **send, amount="2", moved_as="returned", party=BAR)
    keeper.do("send", **send, amount="1", moved_as="destroyed", witness="CD")
    keeper.do("count", lot=lots.packed, amount="3", because="one is missing")
    return recall_of(keeper.book, lots.oil)
