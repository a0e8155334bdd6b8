"""Checkpoint -> ml/model/details.onnx, ml/model/pairs.onnx and the facts about them in ml/model/model.json.

    python3 export.py CHECKPOINT --out ../model --likeness likeness.json --trained 2026-01-31

`marks.onnx`, the network of the first edition, is not made again here: its facts stand in model.json as they are, and
without a file of its name in the folder the model consists of the new network alone.

A network trained in bytes (train.py --bytes) computes in bytes in the file too. Weights are stored in 8 bits with a scale for each output channel (the pair network's in half precision) and made
single precision inside the graph; the runtime folds that when it loads the file, so nothing is slower. `--single DIR`
keeps the same graphs in single precision too, to compare the two.
"""

import argparse
import hashlib
import json
import os

import numpy as np
import onnx
import torch
from onnx import TensorProto, helper, numpy_helper

from checkpoint import load_networks
from in_bytes import ByteConv, Rounded
from network import CELLS, DETAIL, DIMENSION, SIDE, MarkNetwork, PairNetwork
from preprocess import CONSTANTS
from stored import name_in_file

SMALLEST_STORED_SMALL = 64  # scalars and tiny vectors stay in single precision
OPTIONS = {"opset_version": 17, **({} if torch.__version__ < "2.5" else {"dynamo": False})}


def write_details(network: MarkNetwork, path: str) -> None:
    names = ["z", "details"]
    for each in network.modules():
        if isinstance(each, (Rounded, ByteConv)):
            each.exporting = True
        if isinstance(each, ByteConv):
            each.scale = each.scales().flatten().numpy()
            each.weight.data = each.rounded().detach()
    torch.onnx.export(
        network, (torch.randn(2, 1, SIDE, SIDE),), path, input_names=["x"], output_names=names,
        dynamic_axes={name: {0: "n"} for name in ["x", *names]}, **OPTIONS,
    )


def write_pairs(network: PairNetwork, path: str) -> None:
    names = ["query", "reference", "cosine"]
    details = torch.randn(2, DETAIL, CELLS, CELLS)
    torch.onnx.export(
        network, (details, details, torch.zeros(2)), path, input_names=names, output_names=["logOdds"],
        dynamic_axes={name: {0: "n"} for name in [*names, "logOdds"]}, **OPTIONS,
    )


def computed_in_bytes(model: onnx.ModelProto, network: MarkNetwork) -> onnx.ModelProto:
    """The convolutions between roundings with their weights as bytes and their offsets as whole numbers of the sums' steps."""
    tensors = {t.name: t for t in model.graph.initializer}
    from_node = {out: node for node in model.graph.node for out in node.output}

    def value(name: str):
        if name in tensors:
            return numpy_helper.to_array(tensors[name])
        node = from_node[name]
        return value(node.input[0]) if node.op_type == "Identity" else numpy_helper.to_array(node.attribute[0].t)

    scales = {name_in_file(name, False): m.scale for name, m in network.named_modules() if isinstance(m, ByteConv)}
    added, nodes = [], []
    for node in model.graph.node:
        if node.op_type == "Conv" and node.name in scales:
            x, weight, bias = node.input
            step, scale = float(value(from_node[x].input[1])), scales[node.name].astype(np.float32)
            shape = (-1, 1, 1, 1)
            for name, whole, steps in (
                (weight, np.round(value(weight) / scale.reshape(shape)).astype(np.int8), scale),
                (bias, np.round(value(bias) / (scale * step)).astype(np.int32), scale * np.float32(step)),
            ):
                added += [numpy_helper.from_array(whole, f"{name}_bytes"), numpy_helper.from_array(steps.astype(np.float32), f"{name}_scale"),
                          numpy_helper.from_array(np.zeros(len(steps), whole.dtype), f"{name}_zero")]
                nodes.append(helper.make_node("DequantizeLinear", [f"{name}_bytes", f"{name}_scale", f"{name}_zero"], [f"{name}_whole"], axis=0))
            node.input[1], node.input[2] = f"{weight}_whole", f"{bias}_whole"
        nodes.append(node)
    used = {name for node in nodes for name in node.input}
    kept = [t for t in model.graph.initializer if t.name in used] + added
    graph = helper.make_graph(nodes, model.graph.name, model.graph.input, model.graph.output, kept)
    return helper.make_model(graph, opset_imports=model.opset_import)


def halved(values, name: str):
    if np.abs(values).max() > 60000:
        raise ValueError(f"{name}: a weight of {np.abs(values).max()} does not fit float16")
    kept = [numpy_helper.from_array(values.astype(np.float16), f"{name}_half")]
    return kept, [helper.make_node("Cast", [f"{name}_half"], [name], to=TensorProto.FLOAT)]


def in_bytes(values, name: str):
    """8 bits and a scale for each first index, which is the output channel of a convolution."""
    scale = np.abs(values).max(axis=tuple(range(1, values.ndim)), keepdims=True) / 127
    scale = np.maximum(scale, 1e-12).astype(np.float32)
    kept = [numpy_helper.from_array(np.round(values / scale).astype(np.int8), f"{name}_bytes"), numpy_helper.from_array(scale, f"{name}_scale")]
    return kept, [
        helper.make_node("Cast", [f"{name}_bytes"], [f"{name}_whole"], to=TensorProto.FLOAT),
        helper.make_node("Mul", [f"{name}_whole", f"{name}_scale"], [name]),
    ]


def smaller(model: onnx.ModelProto, name: str, whole_bytes: bool) -> onnx.ModelProto:
    """Stores every large weight small, followed by what makes it float32 again."""
    kept, before = [], []
    for tensor in model.graph.initializer:
        values = numpy_helper.to_array(tensor)
        if values.dtype != np.float32 or values.size < SMALLEST_STORED_SMALL:
            kept.append(tensor)
            continue
        pack = in_bytes if whole_bytes and values.ndim > 1 else halved
        tensors, nodes = pack(values, tensor.name)
        kept += tensors
        before += nodes
    graph = helper.make_graph(before + list(model.graph.node), name, model.graph.input, model.graph.output, kept)
    made = helper.make_model(graph, opset_imports=model.opset_import, producer_name="countermark")
    made.ir_version = min(model.ir_version, 8)
    onnx.checker.check_model(made)
    return made


def sum_of(path: str) -> str:
    with open(path, "rb") as file:
        return hashlib.sha256(file.read()).hexdigest()


def network_facts(file: str, sha256: str) -> dict:
    return {"file": file, "sha256": sha256, "input": "x", "output": "z", "dimension": DIMENSION}


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("checkpoint", help="written by train.py, or 'random' for untrained weights")
    parser.add_argument("--out", default=os.path.join(os.path.dirname(__file__), "..", "model"))
    parser.add_argument("--likeness", help="JSON written by measure.py")
    parser.add_argument("--trained", required=True, help="YYYY-MM-DD")
    parser.add_argument("--version", default="2.0.0")
    parser.add_argument("--single", help="also keep the single-precision ONNX files in this folder")
    options = parser.parse_args()

    torch.manual_seed(0)
    networks = (MarkNetwork().eval(), PairNetwork().eval()) if options.checkpoint == "random" else load_networks(options.checkpoint)
    sums = {}
    for network, write, name in zip(networks, (write_details, write_pairs), ("details", "pairs")):
        single = os.path.join(options.single or options.out, f"{name}.single.onnx")
        write(network, single)
        file_of = os.path.join(options.out, f"{name}.onnx")
        made = onnx.load(single)
        if name == "details" and any(isinstance(m, ByteConv) for m in network.modules()):
            made = computed_in_bytes(made, network)
        onnx.save(smaller(made, "pairs" if name == "pairs" else "marks", name == "details"), file_of)
        if not options.single:
            os.remove(single)
        sums[name] = sum_of(file_of)
        parameters = sum(p.numel() for p in network.parameters())
        print(f"{file_of}: {os.path.getsize(file_of) / 1e6:.2f} MB, {parameters / 1e6:.2f} M parameters")

    target = os.path.join(options.out, "model.json")
    likeness = {}
    if options.likeness:
        with open(options.likeness) as file:
            likeness = json.load(file)
    elif os.path.exists(target):
        # Stand until calibrate.py --likeness has fitted new ones.
        with open(target) as file:
            likeness = json.load(file)["likeness"]
    described = [{**network_facts("details.onnx", sums["details"]), "details": "details"}]
    first = os.path.join(options.out, "marks.onnx")
    if os.path.exists(first):
        described.insert(0, network_facts("marks.onnx", sum_of(first)))
    facts = {
        "name": "marks", "version": options.version, "networks": described,
        "pairs": {
            "file": "pairs.onnx", "sha256": sums["pairs"], "channels": DETAIL, "cells": CELLS,
            "query": "query", "reference": "reference", "cosine": "cosine", "output": "logOdds",
        },
        "side": SIDE, "dimension": DIMENSION * len(described), "queryTurns": 12,
        "preprocess": CONSTANTS, "trained": options.trained, "likeness": likeness,
    }
    with open(target, "w") as file:
        json.dump(facts, file, indent=2)
        file.write("\n")


if __name__ == "__main__":
    main()
