"""Writes the own test as folders of photographs, for `npm run evaluate`.

    python3 own_test.py DIR --designs DESIGNS [--seed 5] [--split test] [--known 1000] [--several 1]

The first 1,000 test designs are known: DIR/references/<class>/r.webp (severity 0.3, nearly
upright), DIR/moderate/<class>/q.webp (0.6) and DIR/hard/<class>/q.webp (1.0), both at any
rotation. The next 1,000 are in no reference: DIR/absent/<class>/q.webp and DIR/absent-hard.

`--known` takes fewer of both. `--several N` photographs each design N times, q.webp, q2.webp and so
on, every one with a light, wear and rotation of its own, for `npm run evaluate -- --multi`; the first
ones do not depend on N. `--split validation` takes the designs that may be tuned on.

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
    parser.add_argument("--split", choices=("test", "validation"), default="test")
    parser.add_argument("--known", type=int, choices=range(1, 1001), metavar="1..1000", default=1000)
    parser.add_argument("--several", type=int, choices=range(1, 7), metavar="1..6", default=1)
    options = parser.parse_args()
    packed = load(os.path.join(options.designs, f"{options.split}.bin.gz"), "cpu")
    known, unknown = packed[: options.known], packed[1000 : 1000 + options.known]
    torch.manual_seed(options.seed)
    at = lambda part: os.path.join(options.out, part)
    write(at("references"), shots(known, *REFERENCE), "r.webp")
    for name in ["q.webp", *(f"q{n}.webp" for n in range(2, options.several + 1))]:
        write(at("moderate"), shots(known, 0.6, math.pi), name)
        write(at("hard"), shots(known, 1.0, math.pi), name)
        write(at("absent"), shots(unknown, 0.6, math.pi), name)
        write(at("absent-hard"), shots(unknown, 1.0, math.pi), name)
    if options.split == "test":
        pairs = load(os.path.join(options.designs, "lookalikes.bin.gz"), "cpu")[: options.known]
        twin = lambda i: f"t{i // 2 + 1:04d}{'ab'[i % 2]}"
        write(at("twins/references"), shots(pairs, *REFERENCE), "r.webp", twin)
        write(at("twins/queries"), shots(pairs, 0.6, math.pi), "q.webp", twin)
        write(at("twins/good"), shots(pairs, 0.3, math.pi), "q.webp", twin)


if __name__ == "__main__":
    main()
