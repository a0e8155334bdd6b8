"""Writes the photographs that probabilities are fitted on, for `npm run evaluate -- --features`.

    python3 calibration_set.py DIR --designs DESIGNS [--seed 7]

All 2,000 validation designs are known, by one to four references each (severity 0.3, nearly
upright): DIR/references/<class>/r1.webp to r4.webp. Each is asked for once, at a severity drawn
evenly from 0.3 to 1.0 and any rotation: DIR/queries/<class>/q.webp. Which of the references a
query meets, and whether its own are among them, `evaluate --features` draws.
"""

import argparse
import math
import os

import numpy as np
import torch
from PIL import Image

from designs import load, unpack
from measure import CHUNK, REFERENCE, shots
from render import photograph

QUALITY = 92
MOST_REFERENCES = 4
SEVERITY = (0.3, 1.0)


def write(folder: str, designs, pictures: torch.Tensor, name: str) -> None:
    """Picture i is one of design i of the list."""
    for design, picture in zip(designs, pictures[:, 0]):
        place = os.path.join(folder, f"d{design + 1:04d}")
        os.makedirs(place, exist_ok=True)
        grey = (picture.numpy() * 255).round().astype(np.uint8)
        Image.fromarray(grey).save(os.path.join(place, name), quality=QUALITY)


def worn(packed) -> torch.Tensor:
    """A photograph of each design at any rotation and a severity of its own, float [n, 1, 160, 160]."""
    low, high = SEVERITY
    unit = lambda part: torch.rand(len(part), 1, 1, 1)
    full = lambda part: torch.full((len(part), 1, 1, 1), math.pi)
    return torch.cat([photograph(unpack(p), low + (high - low) * unit(p), full(p), 1.0) for p in packed.split(CHUNK)])


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("out")
    parser.add_argument("--designs", required=True)
    parser.add_argument("--seed", type=int, default=7)
    options = parser.parse_args()
    packed = load(os.path.join(options.designs, "validation.bin.gz"), "cpu")
    torch.manual_seed(options.seed)
    write(os.path.join(options.out, "queries"), range(len(packed)), worn(packed), "q.webp")
    for k in range(MOST_REFERENCES):
        # Design i has 1 + i mod 4 references.
        these = [i for i in range(len(packed)) if i % MOST_REFERENCES >= k]
        write(os.path.join(options.out, "references"), these, shots(packed[these], *REFERENCE), f"r{k + 1}.webp")


if __name__ == "__main__":
    main()
