"""Compares every number of the SQL of an export with the program's own JSON."""

import json
import math
import pathlib

COUNTS = ["calls", "closed", "suspected_misdiagnoses", "unproven", "insisted", "left_open"]


def statements(out):
    """The statements of the file, for a program that takes one at a time."""
    lines = (pathlib.Path(out) / "audit.sql").read_text().splitlines()
    code = "\n".join(line for line in lines if not line.startswith("--"))
    return [statement for statement in code.split(";") if statement.strip()]


class Comparison:
    """Values held against each other, with what differs."""

    def __init__(self):
        self.compared = 0
        self.wrong = []

    def same(self, where, sql, own):
        self.compared += 1
        if isinstance(own, bool):
            own = int(own)
        if isinstance(own, float):
            # The two add and multiply in another order.
            fits = sql is not None and math.isclose(float(sql), own, rel_tol=1e-11, abs_tol=1e-12)
        else:
            fits = sql == own
        if not fits:
            self.wrong.append(f"{where}: {sql!r} by SQL, {own!r} by the program")

    def rate(self, where, row, own):
        for sql, name in [("callbacks", "count"), ("followed", "of"), ("rate", "rate"), ("low", "low"), ("high", "high")]:
            self.same(f"{where}, {name}", row[sql], own[name])

    def settled(self, where, row, own):
        for name, theirs in [("", "of"), ("_callbacks", "count"), ("_rate", "rate"), ("_low", "low"), ("_high", "high"), ("_too_small", "too_small")]:
            self.same(f"{where}, settled, {theirs}", row[f"settled{name}"], own[theirs])

    def rows(self, where, sql, own, columns, key):
        """Rows with the same key, column by column: names of the SQL, with those of the JSON."""
        self.same(f"{where}, rows", len(sql), len(own))
        # Where a name is missing it comes last.
        order = lambda names: lambda row: [(row[name] is None, row[name] or "") for name in names]
        sql = sorted(sql, key=order([mine for mine, _ in key]))
        own = sorted(own, key=order([theirs for _, theirs in key]))
        for mine, theirs in zip(sql, own):
            name = " ".join(str(theirs[column]) for _, column in key)
            for column, other in key + columns:
                self.same(f"{where}, {name}, {column}", mine[column], theirs[other])
            if "callbacks" in theirs:
                self.rate(f"{where}, {name}", mine, theirs["callbacks"])
                self.settled(f"{where}, {name}", mine, theirs["settled"])


def compare(query, own):
    """`query` takes the name of a view and gives its rows as dictionaries."""
    found = Comparison()
    (summary,) = query("audit_summary")
    for name in ["window_days", "without_library", "without_equipment"] + COUNTS[:2] + COUNTS[3:]:
        found.same(f"summary, {name}", summary[name], own[name])
    found.same("summary, suspected", summary["suspected_misdiagnoses"], len(own["suspected_misdiagnoses"]))
    found.rate("summary", summary, own["callbacks"])
    found.settled("summary", summary, own["callbacks"]["settled"])
    estimates = [f"{by}{end}" for by in ["at_30_days", "at_window"] for end in ["", "_low", "_high"]]
    for name in estimates + ["followed_days", "same_visit", "returns", "proofs"]:
        found.same(f"summary, {name}", summary[name], own["callbacks"][name])
    found.same("summary, at_30_days_known", summary["at_30_days_known"], own["callbacks"]["at_30_days_low"] is not None)
    found.same("summary, same complaint", summary["same_complaint"], own["callbacks"]["same_complaint"]["count"])
    for name in ["proven", "insisted"]:
        found.same(f"summary, condemned, {name}", summary[f"condemned_{name}"], own["condemned"][name])

    alike = lambda names: [(name, name) for name in names]
    for name, more in [("technician", []), ("tree", []), ("part", ["proven"])]:
        rows = own[f"by_{name}"]
        found.rows(f"by {name}", query(f"audit_by_{name}"), rows, alike(COUNTS + ["too_small", "same_visit"] + more), alike([name]))
    found.rows("by month", query("audit_by_month"), own["by_month"], alike(["closed"]), [("closed_month", "month")])
    found.rows("learned", query("audit_learned"), own["learned"], alike(["proven", "held", "came_back"]), alike(["fault"]))
    sessions = [("first_session", "first"), ("second_session", "second")]
    columns = alike(["equipment", "technician", "second_technician", "days", "same_complaint", "same_visit", "fault", "outcome", "then_outcome"])
    found.rows("callbacks", query("audit_callback_pairs"), own["callback_pairs"], columns + [("then_fault", "then")], sessions)
    columns = alike(["equipment", "technician", "condemned", "insisted", "remedy", "part", "days"])
    suspected = own["suspected_misdiagnoses"]
    found.rows("suspected", query("audit_suspected_misdiagnoses"), suspected, columns + [("then_fault", "then")], sessions)
    columns = alike(["technician", "equipment", "fault", "unit", "margin"])
    found.rows("borderline", query("audit_borderline"), own["borderline"], columns, alike(["session", "reading", "value"]))
    return found


def report(query, path):
    """Says how many values were compared; stops with those that differ."""
    found = compare(query, json.loads(pathlib.Path(path).read_text()))
    if found.wrong:
        raise SystemExit("\n".join(found.wrong))
    print(f"{found.compared} values compared")
