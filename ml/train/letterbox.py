"""Photograph -> what the network that finds marks sees. The reference for ml/whole.ts.

    python3 letterbox.py CHECKPOINT [--out ../../tests/fixtures/regions]

1. Grey, over white, as in preprocess.py.
2. The photograph lies in the middle of a square whose side is its longer side, mirrored past its edges
   for the filter's sake, and is resized to 192 x 192 with an antialiased triangle filter.
3. A pixel belongs to the photograph when its centre does: |2 (i + 0.5) / 192 - 1| < width / side, and so down.
4. Standardised over the photograph's pixels alone: (x - mean) / (standard deviation + 0.02); 0 beside it.

Run as a program it writes tests/fixtures/regions: photographs of tests/fixtures/preprocess as the network sees
them (little-endian int16, 4096 to the unit, 192 rows of 192) and the best box it finds in each.
"""

import argparse
import json
import math
import os

import numpy as np
from PIL import Image

from preprocess import SOFTENING, cut, grey

SIDE = 192
UNIT = 4096
PHOTOGRAPHS = ("wide", "edge", "alpha")


def letterbox(image: Image.Image) -> np.ndarray:
    """float32 [192, 192]"""
    whole = {"x": 0, "y": 0, "width": image.width, "height": image.height}
    square = cut(grey(image), whole, 0).astype(np.float32)
    small = Image.fromarray(square, mode="F").resize((SIDE, SIDE), Image.Resampling.BILINEAR)
    picture = np.asarray(small, dtype=np.float64)
    line = np.abs(2 * (np.arange(SIDE) + 0.5) / SIDE - 1)
    side = max(image.width, image.height)
    inside = (line[:, None] < image.height / side) & (line[None] < image.width / side)
    mean, deviation = picture[inside].mean(), picture[inside].std()
    return np.where(inside, (picture - mean) / (deviation + SOFTENING), 0).astype(np.float32)


def main() -> None:
    import torch

    from regions import best, load_regions

    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("checkpoint")
    fixtures = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "tests", "fixtures")
    parser.add_argument("--out", default=os.path.join(fixtures, "regions"))
    options = parser.parse_args()
    os.makedirs(options.out, exist_ok=True)
    network = load_regions(options.checkpoint)
    rows = []
    for name in PHOTOGRAPHS:
        image = Image.open(os.path.join(fixtures, "preprocess", f"{name}.png"))
        picture = letterbox(image)
        (picture * UNIT).round().clip(-32768, 32767).astype("<i2").tofile(os.path.join(options.out, f"{name}.bin"))
        with torch.no_grad():
            box, score = best(network(torch.from_numpy(picture)[None, None]))
        # From the square's pixels to the photograph's, and no further than the photograph reaches.
        scale = max(image.width, image.height) / SIDE
        left, top, right, bottom = (v * scale for v in box[0].tolist())
        aside, above = (max(image.width, image.height) - image.width) / 2, (max(image.width, image.height) - image.height) / 2
        clip = lambda v, size: min(max(0.0, v), size)
        x, y = clip(left - aside, image.width), clip(top - above, image.height)
        rows.append({
            "name": name, "photograph": f"../preprocess/{name}.png", "picture": f"{name}.bin",
            "box": [round(v, 2) for v in (x, y, clip(right - aside, image.width) - x, clip(bottom - above, image.height) - y)],
            "score": round(math.log(float(score) / (1 - float(score))), 3),
        })
    with open(os.path.join(options.out, "fixtures.json"), "w") as file:
        json.dump({"from": "ml/train/letterbox.py", "unit": UNIT, "side": SIDE, "fixtures": rows}, file, indent=2)
        file.write("\n")


if __name__ == "__main__":
    main()
