"""How help looks: names in one column, words in the next, no frames."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from cyclopts.help import HelpEntry, HelpPanel
    from rich.console import Console, ConsoleOptions


class HelpPage:
    """Prints one part of a help page at a time."""

    def __call__(self, console: Console, options: ConsoleOptions, panel: HelpPanel) -> None:  # noqa: ARG002
        """Print a heading and its entries."""
        from rich.padding import Padding
        from rich.table import Table
        from rich.text import Text

        if not panel.entries:
            return
        grid = Table.grid(padding=(0, 3, 0, 0))
        grid.add_column(no_wrap=True, style="bold")
        grid.add_column()
        for entry in panel.entries:
            grid.add_row(", ".join(labels(entry)), entry.description or "")
        console.print(Text(str(panel.title), style="bold"))
        console.print(Padding(grid, (0, 0, 0, 2), expand=False))
        console.print()

    def render_usage(self, console: Console, options: ConsoleOptions, usage: Any) -> None:  # noqa: ARG002
        """Print how the command is called."""
        if usage:
            said = getattr(usage, "plain", str(usage)).removeprefix("Usage: ")
            console.print(f"Usage: {said}", highlight=False, markup=False)

    def render_description(
        self,
        console: Console,
        options: ConsoleOptions,  # noqa: ARG002 - the protocol names it
        description: Any,
    ) -> None:
        """Print what the command is for."""
        if description:
            console.print(description, highlight=False)


def labels(entry: HelpEntry) -> tuple[str, ...]:
    """Return the names under which something is given, without its opposite."""
    given = entry.display_labels_with_metavar
    return tuple(label for label in given if not label.startswith("--no-"))
