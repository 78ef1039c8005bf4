"""For every test: no terminal's width from outside, the longest test begun first where several run side by side, and new mills
made quickly."""

import os

os.environ.pop("COLUMNS", None)  # what runs tests side by side sets it, and it would shape our tables


def pytest_configure():
    import empty_mills

    from tracker.store import opening

    opening.upgrade = empty_mills.upgrade


def pytest_collection_modifyitems(items):
    items.sort(key=lambda item: item.name != "test_the_types_fit")
