"""The crew's own ways by chance: how much longer a long way takes."""


def ways(c, shop, job):
    """Rates by distance of the owner's own, and ways that are long enough to count."""
    for method, (each, past) in {"chute": (10, 20), "wheelbarrow": (50, 40), "buggy": (100, 80), "pump": (100, 120)}.items():
        if c.often(0.3, "way of the book"):
            shop.setdefault("way", {})[method] = f"{c.whole(0, 30)}% per {each} ft past {past} ft"
    if isinstance(job["access"], dict) and c.often(0.3, "a long way"):
        job["access"]["distance"] = f"{c.whole(100, 400)} ft"
