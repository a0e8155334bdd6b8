"""Checkpoint of regions.py -> ml/model/regions.onnx and the facts about it in ml/model/regions.json.

    python3 export_regions.py CHECKPOINT --designs DIR --trained YYYY-MM-DD [--out ../model] [--scenes 2000]

The confidence is fitted here, on scenes of validation designs: a logistic curve, by Newton's method, of "the best
box overlaps the mark's by half or more" against its score; where a scene shows no mark, it does not.
"""

import argparse
import hashlib
import json
import os

import onnx
import torch

from designs import load
from export import smaller
from regions import GRID, SIDE, best, drawn, load_regions, overlap

UNIT = 24


def scored(network, packed):
    """Scores before the logistic curve, and whether the box is right, for scenes of the designs."""
    scores, right = [], []
    with torch.no_grad():
        for part in packed.split(100):
            pictures, boxes, shown = drawn(part)
            box, score = best(network(pictures))
            iou, _ = overlap(box, boxes[:, 0])
            scores.append(torch.logit(score, 1e-6))
            right.append(((iou >= 0.5) & (shown[:, 0] > 0)).float())
    return torch.cat(scores).double(), torch.cat(right).double()


def fitted(scores, right):
    """Offset and slope of the logistic curve that makes what was seen likeliest."""
    x = torch.stack([torch.ones_like(scores), scores], 1)
    w = torch.zeros(2, dtype=torch.float64)
    for _ in range(50):
        p = torch.sigmoid(x @ w)
        gradient = x.t() @ (right - p) - 1e-3 * w
        curve = (x * (p * (1 - p))[:, None]).t() @ x + 1e-3 * torch.eye(2, dtype=torch.float64)
        w = w + torch.linalg.solve(curve, gradient)
    return [round(float(v), 4) for v in w]


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("checkpoint")
    parser.add_argument("--designs", required=True)
    parser.add_argument("--trained", required=True, help="YYYY-MM-DD")
    parser.add_argument("--version", default="1.0.0")
    parser.add_argument("--scenes", type=int, default=2000)
    parser.add_argument("--out", default=os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "model"))
    options = parser.parse_args()

    network = load_regions(options.checkpoint)
    torch.manual_seed(4)
    packed = load(os.path.join(options.designs, "validation.bin.gz"), "cpu")[: options.scenes]
    offset, slope = fitted(*scored(network, packed))

    target = os.path.join(options.out, "regions.onnx")
    single = target + ".single"
    newer = {} if torch.__version__ < "2.5" else {"dynamo": False}
    torch.onnx.export(
        network, (torch.randn(1, 1, SIDE, SIDE),), single, input_names=["x"], output_names=["y"], opset_version=17,
        **newer,
    )
    onnx.save(smaller(onnx.load(single), "regions", False), target)
    os.remove(single)
    with open(target, "rb") as file:
        content = file.read()
    facts = {
        "name": "regions", "version": options.version, "file": "regions.onnx",
        "sha256": hashlib.sha256(content).hexdigest(),
        "input": "x", "output": "y", "side": SIDE, "cells": GRID, "unit": UNIT, "trained": options.trained,
        "confidence": {
            "offset": offset, "slope": slope,
            "how": f"Logistic curve of 'overlaps the mark's box by half or more' against the score of the best place, "
                   f"on {len(packed)} scenes of validation designs (ml/train/export_regions.py).",
        },
    }
    with open(os.path.join(options.out, "regions.json"), "w") as file:
        json.dump(facts, file, indent=2)
        file.write("\n")
    print(f"{target}: {len(content) / 1e6:.2f} MB, confidence {offset} + {slope} x score")


if __name__ == "__main__":
    main()
