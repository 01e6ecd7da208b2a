"""Modules without a test of their own name, and tests that are about no one module: each why.

Guarantees: `tests/test_house.py` holds the tables to the tree; what has its mirror, is gone, or
names a test that does not reach it, fails. Refuses: a module that is in no table.
"""

Held = dict[str, tuple[str, str]]
"""For each module the test that holds it, and why it has none of its own."""

FACTS = (
    "fields without a method: every kind is written, read back and refused there",
    (
        *("bench", "evidence", "goods", "house", "masters"),
        *("recall", "receipt", "trials", "upkeep", "verdicts"),
    ),
)
TOLD = (
    "sentences of one entry: every kind and every field of it is told there",
    ("bench", "goods", "masters", "parts"),
)
SCREENS = (
    "prints what its command answers, and is looked at where the command is",
    {f"{room}/{name}": name for room, names in (
        ("bench", ("sheet",)),
        ("causes", ("chart", "compare", "suspects", "trial")),
        ("copies", ("demo",)),
        ("evidence", ("prove", "seal", "verify")),
        ("glass", ("foretell", "serving")),
        ("goods", ("complain", "label")),
        ("guide", ("guide", "help")),
        ("lots", (
            *("complaints", "due", "journal", "lot"), *("packet", "record", "stock", "trace"),
        )),
        ("masters", (
            *("formula", "house", "init", "limits"), *("material", "party", "person"),
        )),
        ("recall", ("forget", "recall")),
    ) for name in names}
    | {"copies/copied": "backup", "goods/tags": "label", "goods/label_said": "label"}
    | {"masters/new_formula": "formula", "glass/spirit": "stock", "recall/pack": "recall"},
)  # fmt: skip
VIEWS = (
    "fields without a method: filled by the words and printed by the paper of the room",
    {
        "bench": "bench/test_sheet",
        "causes": "causes/test_compare",
        "goods": "goods/test_label",
        "evidence": "lots/test_packet",
        "glass": "glass/test_spirit",
        "lots": "lots/test_record",
        "recall": "recall/test_pack",
    },
)
ANSWERS = (
    "filled from what the service returned, and held to its schema with every other answer",
    {
        "copies/demo": "demo",
        "guide/guide": "guide",
        "guide/help": "help",
        "lots/packet": "packet",
        "lots/record": "record",
        "masters/new_formula": "formula",
    },
)
GRAMMAR = "what the grammar of a line is made of, which is read there line by line"
HELD_BY: Held = {
    **{
        f"reports/json/{name}.py": (f"tests/cli/commands/test_{command}.py", ANSWERS[0])
        for name, command in ANSWERS[1].items()
    },
    **{
        f"reports/json/{name}.py": (
            "tests/reports/json/kit/test_filled.py",
            "filled from what the service returned: every part of it stands there under its key",
        )
        for name in (
            *("bench/sheet", "evidence/seal", "glass/foretell", "goods/label", "lots/acts"),
            *(f"copies/{name}" for name in ("copied", "rehearsal", "taken_in", "upgrade")),
            *(f"masters/{name}" for name in ("house", "init", "material", "party", "person")),
            *("lots/complaints", "recall/epcis", "recall/forget"),
        )
    },
    "ledger/service/glass/recipe.py": (
        "tests/service/glass/test_foretell.py",
        "a part of the forecast, which is looked at there as a maker asks it",
    ),
    "ledger/service/lots/reach.py": (
        "tests/service/lots/test_trace.py",
        "the lots that are met, looked at as a trace tells them",
    ),
    "ledger/store/ahead/recalls.py": (
        "tests/service/recall/test_forget.py",
        "foretells what forgetting asks, held there; test_foresight.py counts the journeys of it",
    ),
    "ledger/service/desk/judged.py": (
        "tests/service/recall/test_order.py",
        "drafts are judged side by side there, and all that stands in the way of any is told",
    ),
    "ledger/service/account/mixed.py": (
        "tests/service/glass/test_haze.py",
        "the oils of a lot mixed for a forecast, which is looked at there",
    ),
    "reports/json/kit/problems.py": (
        "tests/cli/kit/test_errors.py",
        "every family of error is told there as a command tells it",
    ),
    **{
        f"reports/json/kit/{name}.py": (
            "tests/reports/json/evidence/test_verify.py",
            "a part of the answers about evidence, filled and read there",
        )
        for name in ("finding", "seal")
    },
    **{
        f"ledger/domain/entries/{name}.py": ("tests/domain/entries/test_plain.py", FACTS[0])
        for name in FACTS[1]
    },
    "ledger/service/account/lots.py": (
        "tests/service/lots/test_stock.py",
        "lists are looked at as stock tells them",
    ),
    "ledger/service/account/replay.py": (
        "tests/service/account/test_contents.py",
        "reads what the one replay needs, whose contents are looked at there",
    ),
    "ledger/service/account/shares.py": (
        "tests/store/ahead/test_traced.py",
        "shares as the one replay carries them, asked there alone; test_shares.py has the figures",
    ),
    **{
        f"ledger/science/contents/{name}.py": (
            "tests/science/contents/test_shares.py",
            "one way of the shares, which are held to agree forward and back there",
        )
        for name in ("shares_ahead", "shares_behind")
    },
    "ledger/domain/lots/steps.py": (
        "tests/store/read/test_steps.py",
        "fields without a method: read from the book there, and summed in science/contents",
    ),
    "ledger/domain/rules/always/volumes.py": (
        "tests/domain/rules/always/test_batch_filling.py",
        "how the rules of a batch say their volumes; its sums have a doctest",
    ),
    "ledger/domain/rules/release/looks.py": (
        "tests/domain/rules/release/test_clarity.py",
        "which look answers a step, as the rules of clarity ask; its match has a doctest",
    ),
    "ledger/service/glass/card.py": (
        "tests/service/glass/test_serving.py",
        "fields without a method: the card that the serving fills",
    ),
    **{
        f"ledger/service/causes/{name}.py": (
            "tests/service/causes/test_plan.py",
            "what a plan is made of: read, laid out and sized as a maker plans it there",
        )
        for name in ("layout", "rates", "tries")
    },
    **{
        f"ledger/{name}.py": (
            "tests/service/causes/test_outcome.py",
            "a planned trial from its jars to what it shows, made in a book there",
        )
        for name in ("service/bench/jars", "service/causes/redrawn")
    },
    "reports/words/causes/trial_sheet.py": (
        "tests/reports/pdf/causes/test_trial.py",
        "what stands on which side of the sheet, read back from the paper there",
    ),
    "ledger/store/audit/book.py": (
        "tests/service/evidence/test_verify.py",
        "the audit that verify runs: every changed row of every table is tried there",
    ),
    "ledger/store/audit/texts.py": (
        "tests/store/audit/test_swift.py",
        "one statement for the swift audit, which is held to the slow one there",
    ),
    "reports/pdf/kit/styles.py": (
        "tests/reports/pdf/kit/test_rows.py",
        "sizes and faces alone: seen in what is laid out with them",
    ),
    **{
        f"reports/views/{name}.py": (f"tests/reports/pdf/{test}.py", VIEWS[0])
        for name, test in VIEWS[1].items()
    },
    **{
        f"reports/words/entries/{name}.py": (
            "tests/reports/words/entries/test_sentence.py",
            TOLD[0],
        )
        for name in TOLD[1]
    },
    **{
        f"{name}.py": (
            "tests/service/copies/intake/test_take_in.py",
            "a part of taking tables in, which is looked at there from the file to the entries",
        )
        for name in (
            *("ledger/domain/tables/grid", "ledger/store/read/sheets"),
            "ledger/service/copies/intake/table_maps",
        )
    },
    **{
        f"{name}.py": (
            "tests/cli/commands/test_import.py",
            "says what an import answers, and is looked at where the command is",
        )
        for name in ("cli/screens/copies/take_in",)
    },
    **{
        f"cli/screens/bench/{name}.py": ("tests/cli/screens/bench/test_line.py", GRAMMAR)
        for name in ("help", "parts", "slots")
    },
    **{
        f"cli/screens/bench/{name}.py": (
            "tests/cli/commands/test_bench.py",
            "a part of the session, which is played there line by line",
        )
        for name in ("customs", "piped", "run")
    },
    **{
        f"{name}.py": (
            "tests/cli/commands/test_list.py",
            "lists of what went out, came and was cleaned, as the command tells them there",
        )
        for name in ("cli/screens/lots/acts",)
    },
    **{
        f"{name}.py": (
            "tests/cli/commands/test_backup.py",
            "a rehearsal of losing the book, as the command tells it there",
        )
        for name in ("cli/screens/copies/rehearsal",)
    },
    **{
        f"{name}.py": (
            "tests/cli/commands/test_export.py",
            "what goes out of the book, written and read back by another reader there",
        )
        for name in (
            *("cli/screens/copies/tables", "cli/screens/recall/events", "cli/screens/recall/epcis"),
        )
    },
    "ledger/store/copies/tables.py": (
        "tests/service/copies/test_export_tables.py",
        "every table with all its columns and rows, compared with the book there",
    ),
    "cli/screens/glass/page.py": (
        "tests/cli/commands/test_page.py",
        "the pages of lots, written there and read by another reader of their form",
    ),
    "cli/kit/papers.py": (
        "tests/cli/commands/test_serving.py",
        "writes the card that a command hands it; each such command prints one",
    ),
    "reports/kit/card.py": (
        "tests/reports/pdf/kit/test_card.py",
        "fields without a method: filled by the words and printed by the paper",
    ),
    "cli/screens/masters/samples.py": (
        "tests/cli/commands/test_formula.py",
        "writes the samples as they are kept, and is looked at where the command is",
    ),
    **{
        f"cli/screens/{name}.py": (f"tests/cli/commands/test_{command}.py", SCREENS[0])
        for name, command in SCREENS[1].items()
    },
}
BY_DOCTEST = (
    "reports/kit/held.py",
    "ledger/domain/tables/templates.py",
    "ledger/domain/rules/figures.py",
    "ledger/science/ranges.py",
    "reports/json/kit/answer.py",
    "reports/kit/figures.py",
    "cli/kit/cards.py",
    "reports/kit/pages.py",
)
"""Pure helpers that their doctests hold."""

ACROSS: dict[str, str] = {
    "tests/cli/test_refused.py": "what many commands refuse, told whole on one book",
    "tests/cli/test_places.py": "the places of files, of all commands that write one",
    "tests/cli/test_unsaid.py": "what is told where a command or its answer is broken off",
    "tests/cli/test_guide_pages.py": "every page of the guide, played",
    "tests/store/read/test_readers.py": "all that every reader answers of one book, field by field",
    "tests/service/account/test_limits_published.py": "shipped limits beside a published table",
    "tests/service/desk/test_refused.py": "what many acts refuse, told whole on one book",
    "tests/domain/rules/test_whole.py": "all rules together, in the cases of every family",
    "tests/service/desk/test_answers.py": "all that every room answers of one book, field by field",
    "tests/service/desk/test_wrong_words.py": "every word of every verb, wrong in three ways",
    "tests/service/desk/test_readings.py": "measured beside reckoned, from the bench to the gate",
    "tests/service/causes/test_years.py": "years typed in verb by verb, beside the judge alone",
    "tests/test_bad_week.py": "the story of a bad week over all rooms",
    "tests/test_named.py": "every figure, choice and default of the ledger, in one list",
    "tests/test_house.py": "the tree itself",
    "tests/test_refused.py": "refusals on several floors, whole with what to do",
    "tests/test_once.py": "what the tests make once for all workers of a run",
    "tests/test_memory.py": "where the tests put their files",
    "tests/reports/pdf/kit/test_family.py": "one family of papers, over all of the demonstration",
    "tests/reports/pdf/goods/test_symbols.py": "every kind of symbol at every printer",
    "tests/reports/words/goods/test_wintergreen.py": "the gravest label, from oil to paper",
    "tests/cli/test_hostile_text.py": "text that deceives, wherever words are taken",
    "tests/cli/test_lazy.py": "what is loaded for help and for a command",
    "tests/reports/json/kit/test_filled.py": "every part of many answers, under its own key",
    "tests/cli/kit/test_json.py": "the kept keys of every answer for machines",
    "tests/cli/kit/test_no_book.py": "what every command says where there is no book",
    "tests/domain/rules/test_main_path.py": "an ordinary season, of which no rule says anything",
    "tests/science/contents/test_compendial.py": "published formulas, by all sums together",
    "tests/service/copies/test_faults.py": "processes that are killed while they write",
    "tests/service/desk/test_turns.py": "writers on a server, overtaken while they are judged",
    "tests/service/desk/test_state_machine.py": "any verbs in any order against a plain model",
    "tests/store/read/test_query_plans.py": "every hot statement goes by an index",
}
"""Tests that are about no one module."""
