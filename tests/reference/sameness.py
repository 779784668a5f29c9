"""Whether a drawn value is the committed one, to the last digits of another machine's sine."""

NEAR = 1e-9


def same(a, b):
    """Equal keys, lengths, words and whole numbers; other numbers within 1e-9."""
    if isinstance(a, dict) and isinstance(b, dict):
        return a.keys() == b.keys() and all(same(a[k], b[k]) for k in a)
    if isinstance(a, (list, tuple)) and isinstance(b, (list, tuple)):
        return len(a) == len(b) and all(map(same, a, b))
    if isinstance(a, float) and isinstance(b, (int, float)):
        return abs(a - b) <= NEAR * max(1.0, abs(a))
    return a == b
