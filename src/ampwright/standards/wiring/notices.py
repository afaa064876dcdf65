"""Labels that stay on an installation for whoever comes next."""

from __future__ import annotations

from ampwright.foundations.checks import Finding, holds, not_applicable, requires

from ..places import wiring


@requires("circuit chart at the board", place=wiring("514.9.1"))
def circuit_chart_present(present: bool) -> Finding:
    """Whoever opens the board can read which device feeds what.

    The charge point's circuit, its device and its residual current device added.

    Examples
    --------
    >>> circuit_chart_present(True).outcome.value
    'pass'
    """
    return holds(present, "" if present else "no chart, or the new circuit is not on it")


@requires("notice to press the test button", place=wiring("514.12.2"))
def test_notice_present(has_rcd: bool, present: bool) -> Finding:
    """The owner is told to test residual current devices at intervals.

    At or near the origin, where there is such a device.

    Examples
    --------
    >>> test_notice_present(True, False).outcome.value
    'fail'
    """
    if not has_rcd:
        return not_applicable("no residual current device")
    return holds(present, "" if present else "no notice at the board")


@requires("earth and bonds labelled: do not remove", place=wiring("514.13.1"))
def earth_label_present(present: bool) -> Finding:
    """Nobody undoes an earth or a bond without knowing what it is.

    At the electrode, at each bond on a pipe, and at a main earth terminal apart from a board.

    Examples
    --------
    >>> earth_label_present(False).outcome.value
    'fail'
    """
    return holds(present, "" if present else "a clamp without its label")


@requires("notice of a second source", place=wiring("514.15.1"))
def sources_notice_present(has_sources: bool, present: bool) -> Finding:
    """Whoever isolates one supply is told that there is another.

    At the origin, the meter, the board and every place of isolation; also for a point that
    gives back.

    Examples
    --------
    >>> sources_notice_present(True, False).outcome.value
    'fail'
    """
    if not has_sources:
        return not_applicable("no source but the network")
    return holds(present, "" if present else "no notice of the second source")


@requires("isolator says what it isolates", place=wiring("514.1.1, 537.2"))
def isolator_label_present(present: bool) -> Finding:
    """Whoever must make the point dead finds the device that does it.

    Where its use is not plain from where it stands.

    Examples
    --------
    >>> isolator_label_present(True).outcome.value
    'pass'
    """
    return holds(present, "" if present else "nothing says what it isolates")
