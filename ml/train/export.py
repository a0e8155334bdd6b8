"""Checkpoint -> ml/model/marks.onnx and the facts about it in ml/model/model.json.

    python3 export.py CHECKPOINT --out ../model --likeness likeness.json --trained 2026-01-31

Weights are stored in half precision and cast to single precision inside the graph; the runtime
folds the casts when it loads the file, so nothing is slower. `--single FILE` keeps the same graph
in single precision too, to compare the two.
"""

import argparse
import hashlib
import json
import os

import numpy as np
import onnx
import torch
from onnx import TensorProto, helper, numpy_helper

from network import DIMENSION, SIDE, MarkNetwork, load_network
from preprocess import CONSTANTS

SMALLEST_HALVED = 64  # scalars and tiny vectors stay in single precision


def write_single(network: MarkNetwork, path: str) -> None:
    options = {} if torch.__version__ < "2.5" else {"dynamo": False}
    torch.onnx.export(
        network, (torch.randn(2, 1, SIDE, SIDE),), path, input_names=["x"], output_names=["z"],
        dynamic_axes={"x": {0: "n"}, "z": {0: "n"}}, opset_version=17, **options,
    )


def halve(model: onnx.ModelProto) -> onnx.ModelProto:
    """Stores every large weight as float16 followed by a Cast to float32."""
    kept, casts = [], []
    for tensor in model.graph.initializer:
        values = numpy_helper.to_array(tensor)
        if values.dtype != np.float32 or values.size < SMALLEST_HALVED:
            kept.append(tensor)
            continue
        if np.abs(values).max() > 60000:
            raise ValueError(f"{tensor.name}: a weight of {np.abs(values).max()} does not fit float16")
        half = tensor.name + "_half"
        kept.append(numpy_helper.from_array(values.astype(np.float16), half))
        casts.append(helper.make_node("Cast", [half], [tensor.name], to=TensorProto.FLOAT))
    nodes = casts + list(model.graph.node)
    graph = helper.make_graph(nodes, "marks", model.graph.input, model.graph.output, kept)
    halved = helper.make_model(graph, opset_imports=model.opset_import, producer_name="countermark")
    halved.ir_version = min(model.ir_version, 8)
    onnx.checker.check_model(halved)
    return halved


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("checkpoint", help="written by train.py, or 'random' for untrained weights")
    parser.add_argument("--out", default=os.path.join(os.path.dirname(__file__), "..", "model"))
    parser.add_argument("--likeness", help="JSON written by measure.py")
    parser.add_argument("--trained", required=True, help="YYYY-MM-DD")
    parser.add_argument("--version", default="1.0.0")
    parser.add_argument("--single", help="also keep the single-precision ONNX file here")
    options = parser.parse_args()

    torch.manual_seed(0)
    network = MarkNetwork().eval() if options.checkpoint == "random" else load_network(options.checkpoint)
    single = options.single or os.path.join(options.out, "marks.single.onnx")
    write_single(network, single)
    target = os.path.join(options.out, "marks.onnx")
    onnx.save(halve(onnx.load(single)), target)
    if not options.single:
        os.remove(single)

    with open(target, "rb") as file:
        content = file.read()
    likeness = {}
    if options.likeness:
        with open(options.likeness) as file:
            likeness = json.load(file)
    facts = {
        "name": "marks", "version": options.version, "file": "marks.onnx",
        "sha256": hashlib.sha256(content).hexdigest(),
        "input": "x", "output": "z", "side": SIDE, "dimension": DIMENSION, "queryTurns": 12,
        "preprocess": CONSTANTS, "trained": options.trained, "likeness": likeness,
    }
    with open(os.path.join(options.out, "model.json"), "w") as file:
        json.dump(facts, file, indent=2)
        file.write("\n")
    parameters = sum(p.numel() for p in network.parameters())
    print(f"{target}: {len(content) / 1e6:.2f} MB, {parameters / 1e6:.2f} M parameters")


if __name__ == "__main__":
    main()
