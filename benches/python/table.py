"""Markdown tables whose columns line up when read as plain text."""

from __future__ import annotations

from collections.abc import Sequence


def table(title: str, headings: Sequence[str], rows: Sequence[Sequence[str]]) -> None:
    """Prints a heading and a table; the first column stands left, numbers stand right."""
    widths = [max(len(line[column]) for line in (headings, *rows)) for column in range(len(headings))]
    numeric = [bool(rows) and all(_is_number(row[column]) for row in rows) for column in range(len(headings))]

    def line(cells: Sequence[str]) -> str:
        placed = [
            f"{cell:>{width}}" if right else f"{cell:<{width}}" for cell, width, right in zip(cells, widths, numeric)
        ]
        return f"| {' | '.join(placed)} |"

    rule = [("-" * (width + 1) + ":") if right else "-" * (width + 2) for width, right in zip(widths, numeric)]
    print(f"\n### {title}\n\n{line(headings)}\n|{'|'.join(rule)}|")
    for row in rows:
        print(line(row))
    print(flush=True)


def _is_number(cell: str) -> bool:
    return cell[:1].isdigit() or cell in ("", "-")


def figures(number: float) -> str:
    """Three figures, without an exponent."""
    if number >= 99.95:
        return f"{number:.0f}"
    return f"{number:.1f}" if number >= 9.995 else f"{number:.2f}"


def count(number: float) -> str:
    """A count of elements as a power of ten."""
    return f"{number:.0e}".replace("e+0", "e")


def answer(reached: float, goal: float | None, *, at_least: bool) -> tuple[str, str]:
    """The goal and whether it is met, as two cells."""
    if goal is None:
        return "-", "-"
    if at_least:
        return f"{goal:g} or more", "met" if reached >= goal else "not met"
    return f"{goal:g} or less", "met" if reached <= goal else "not met"
