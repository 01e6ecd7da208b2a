"""The arguments and options that several commands share: names, metavars, help, completion."""

from collections.abc import Iterator
from types import ModuleType
from typing import Any, get_args

from typer.models import ParameterInfo

from cli.kit import options
from tests.kept.golden import check_golden


def test_every_option_that_several_commands_share_is_the_kept_one() -> None:
    check_golden("cli/asked/shared.txt", told_options(options))


def told_options(module: ModuleType) -> str:
    """Return what the arguments and options that a module names are, some lines each."""
    shared = {name: get_args(kind) for name, kind in vars(module).items()}
    told = (
        line
        for name, kinds in shared.items()
        if kinds and isinstance(kinds[-1], ParameterInfo)
        for line in _told(name, *kinds)
    )
    return "".join(f"{line}\n" for line in told)


def _told(name: str, kind: Any, info: Any) -> Iterator[str]:
    completes = info.autocompletion.__name__ if info.autocompletion else "nothing"
    yield f"{name}: {kind}"
    # Typer keeps the first name of an option that is annotated where else its default stands.
    first = [info.default] if isinstance(info.default, str) else []
    yield f"  {', '.join([*first, *(info.param_decls or ())])} {info.metavar or ''}".rstrip()
    yield f"  {info.help}"
    yield f"  completed by {completes}"
