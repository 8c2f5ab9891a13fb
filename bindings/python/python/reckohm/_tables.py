"""Tables for notebooks: plain HTML, without style of its own."""

from __future__ import annotations

from html import escape
from typing import Any, Iterable, Sequence


def table(caption: str, headings: Sequence[str], rows: Iterable[Sequence[Any]], note: str = "") -> str:
    """A table with a caption above and a note below."""

    def line(tag: str, cells: Sequence[Any]) -> str:
        return "<tr>" + "".join(f"<{tag}>{escape(text(cell))}</{tag}>" for cell in cells) + "</tr>"

    body = "".join(line("td", row) for row in rows)
    head = f"<thead>{line('th', headings)}</thead>" if headings else ""
    below = f"<p>{escape(note)}</p>" if note else ""
    return f"<table><caption>{escape(caption)}</caption>{head}<tbody>{body}</tbody></table>{below}"


def text(cell: Any) -> str:
    """A cell: numbers to five figures, nothing as a dash."""
    if cell is None:
        return "–"
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    if isinstance(cell, float):
        return f"{cell:.5g}"
    return str(cell)


def verdict(verdict: Any) -> str:
    """The table of a verdict."""
    answer = verdict.answer
    if answer == "undecided":
        answer += f", {verdict.side} the limits"
    rows = [
        ("estimate", f"{verdict.estimate} ohm (95 %)"),
        ("limits", f"{text(verdict.limits.lower_ohm)} to {text(verdict.limits.upper_ohm)} ohm"),
        ("rule", verdict.rule),
        ("conformance probability", f"{verdict.conformance_probability:.3f}"),
        ("guard band, ohm", verdict.guard_band_ohm),
        ("acceptance limits, ohm", f"{text(verdict.acceptance_lower_ohm)} to {text(verdict.acceptance_upper_ohm)}"),
        ("distance to the nearest limit, ohm", verdict.distance_ohm),
        ("TUR", verdict.tur),
        ("next step", verdict.next_step),
    ]
    return table(f"Verdict: {answer}", (), rows)


def verdicts(verdicts: Any) -> str:
    """The table of verdicts on many: how many of each answer."""
    counts = verdicts.counts
    parts = sum(counts.values())
    rows = [(answer, count, f"{100 * count / parts:.1f} %" if parts else None) for answer, count in counts.items()]
    limits = verdicts.limits
    note = f"Limits {text(limits.lower_ohm)} to {text(limits.upper_ohm)} ohm; {verdicts.rule}."
    return table(f"Verdicts on {parts}", ("answer", "parts", "share"), rows, note)


def thermistor(thermistor: Any) -> str:
    """The table of a thermistor: its parameters, and what it is at five temperatures of its domain."""
    if thermistor.rated_ohm is not None:
        rated, of_c, (first, second) = thermistor.rated_ohm, thermistor.rated_temperature_c, thermistor.b_temperatures_c
        caption = f"Thermistor: {text(rated)} ohm at {of_c:g} °C, B{first:g}/{second:g} = {text(thermistor.b_kelvin)} K"
    else:
        a, b, c, d = thermistor.coefficients
        terms = f"a = {a:g}, b = {b:g}, " + (f"c = {c:g}, " if c else "") + f"d = {d:g} 1/K"
        caption = f"Thermistor: {terms}, reference {text(thermistor.reference_ohm)} ohm"
    lower, upper = thermistor.domain_c
    places = [lower, *(lower + (upper - lower) * quarter / 4 for quarter in (1, 2, 3)), upper]
    rows = []
    for temperature_c in places:
        ohm, slope = thermistor.resistance_ohm(temperature_c), thermistor.slope(temperature_c)
        rows.append((f"{temperature_c:g}", ohm, slope, f"{100 * slope / ohm:.2f}"))
    headings = ("temperature, °C", "resistance, ohm", "slope, ohm/K", "slope, %/K")
    return table(caption, headings, rows, f"Domain {lower:g} °C to {upper:g} °C, zero power.")


def choice(choice: Any) -> str:
    """The table of a choice: a row a span."""
    headings = ("span", "shows", "counts used", "U95, ohm", "TUR", "conforms at the centre", "outcome")
    rows: list[tuple[Any, ...]] = []
    for made in choice.assessments:
        shows = f"{made.expected_display or 'nothing'}"
        if not made.holds:
            # What it would be worth there is no answer: a conforming part may be over-range.
            rows.append((made.span.label, shows, None, None, None, None, made.outcome))
            continue
        outcome = made.outcome
        if made.factor is not None:
            outcome = f"{made.factor:.2g} times as wide" if made.factor < 100 else f"{made.factor:.0f} times as wide"
        centre = f"{made.conformance_probability_at_centre:.3f}"
        rows.append((made.span.label, shows, made.counts_used, made.expanded_ohm, made.tur, centre, outcome))
    note = ""
    if not choice.chosen.accepts_some:
        chance = choice.chosen.conformance_probability_at_centre
        note = (
            "No span of this meter is good enough for this tolerance: even a part that reads its nominal value on the "
            f"chosen one conforms with a probability of {chance:.3f} only, less than 0.95."
        )
    part = f"{text(choice.nominal_ohm)} ohm, {100 * choice.tolerance:g} %"
    return table(f"Span for {part}: {choice.span.label}", headings, rows, note)


def budget(budget: Any) -> str:
    """The table of a budget: a row a contribution, the result below."""
    headings = ("contribution", "value", "width", "distribution", "sensitivity", "u, ohm", "part of the variance", "dof")
    rows = []
    for row in budget.rows:
        dof = "∞" if row.dof == float("inf") else text(row.dof)
        width = f"{text(row.width)} {row.unit}"
        value = f"{text(row.value)} {row.unit}"
        share = f"{100 * row.share:.1f} %"
        rows.append((row.contribution, value, width, row.distribution, row.sensitivity, row.u_ohm, share, dof))
    expanded = budget.expanded
    note = (
        f"U = {text(expanded.half_width)} ohm, k = {expanded.coverage_factor:.3f}, "
        f"coverage probability {100 * expanded.coverage_probability:g} %; u = {text(budget.u_ohm)} ohm."
    )
    return table(f"Result: {expanded.estimate} ohm (95 %)", headings, rows, note)


def measurement(measurement: Any) -> str:
    """The budget's table, and the advice as a list."""
    advice = "".join(f"<li>{escape(piece.text)}</li>" for piece in measurement.advice)
    return budget(measurement.budget) + (f"<ul>{advice}</ul>" if advice else "")
