"""Writes the own test as folders of photographs, for `npm run evaluate`.

    python3 own_test.py DIR --designs DESIGNS [--seed 5]

The first 1,000 test designs are known: DIR/references/<class>/r.webp (severity 0.3, nearly
upright), DIR/moderate/<class>/q.webp (0.6) and DIR/hard/<class>/q.webp (1.0), both at any
rotation. The next 1,000 are in no reference: DIR/absent/<class>/q.webp and DIR/absent-hard.

Near twins, `lookalikes.bin.gz` of designs/main.mjs test 1000 --twins 1: DIR/twins/references/<pair><a or b>/r.webp,
DIR/twins/queries (0.6) and DIR/twins/good (0.3), both at any rotation.
"""

import argparse
import math
import os

import numpy as np
import torch
from PIL import Image

from designs import load
from measure import REFERENCE, shots

QUALITY = 92


def write(folder: str, pictures: torch.Tensor, name: str, naming=lambda i: f"d{i + 1:04d}") -> None:
    for i, picture in enumerate(pictures[:, 0]):
        place = os.path.join(folder, naming(i))
        os.makedirs(place, exist_ok=True)
        grey = (picture.numpy() * 255).round().astype(np.uint8)
        Image.fromarray(grey).save(os.path.join(place, name), quality=QUALITY)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("out")
    parser.add_argument("--designs", required=True)
    parser.add_argument("--seed", type=int, default=5)
    options = parser.parse_args()
    packed = load(os.path.join(options.designs, "test.bin.gz"), "cpu")
    known, unknown = packed[:1000], packed[1000:2000]
    torch.manual_seed(options.seed)
    at = lambda part: os.path.join(options.out, part)
    write(at("references"), shots(known, *REFERENCE), "r.webp")
    write(at("moderate"), shots(known, 0.6, math.pi), "q.webp")
    write(at("hard"), shots(known, 1.0, math.pi), "q.webp")
    write(at("absent"), shots(unknown, 0.6, math.pi), "q.webp")
    write(at("absent-hard"), shots(unknown, 1.0, math.pi), "q.webp")
    pairs = load(os.path.join(options.designs, "lookalikes.bin.gz"), "cpu")
    twin = lambda i: f"t{i // 2 + 1:04d}{'ab'[i % 2]}"
    write(at("twins/references"), shots(pairs, *REFERENCE), "r.webp", twin)
    write(at("twins/queries"), shots(pairs, 0.6, math.pi), "q.webp", twin)
    write(at("twins/good"), shots(pairs, 0.3, math.pi), "q.webp", twin)


if __name__ == "__main__":
    main()
