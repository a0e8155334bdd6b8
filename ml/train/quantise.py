"""The two networks in 8 bits: ml/model/marks.onnx and details.onnx compute with bytes, three times as fast on a processor.

    python3 quantise.py PATCHES --from ../model --out ../model [--version 2.1.0]

PATCHES holds prepared pictures as float32, n x 160 x 160 (scripts/prepared-patches.ts writes the demo's): from them the
range of each activation is read, smallest to largest. Weights keep seven of their eight bits: processors without
instructions for sums of bytes add two products in 16 bits, which eight would overflow, and the answer would depend on the
machine. They stay stored as they were, in half precision or 8 bits, followed by what makes bytes of them; the runtime
folds that when it loads the file. A network that is in bytes already is left alone. Needs onnx and onnxruntime.
"""

import argparse
import hashlib
import json
import os
import tempfile

import numpy as np
import onnx
import onnxruntime as ort
from onnx import TensorProto, helper
from onnxruntime.quantization import CalibrationDataReader, QuantFormat, QuantType, quantize_static

SIDE = 160
BATCH = 8
IN_BYTES = ["Conv", "Relu", "Add", "Mul", "GlobalAveragePool", "AveragePool", "MaxPool"]


class Pictures(CalibrationDataReader):
    def __init__(self, pictures):
        self.batches = iter(np.array_split(pictures, max(1, len(pictures) // BATCH)))

    def get_next(self):
        batch = next(self.batches, None)
        return None if batch is None else {"x": batch}


def quantised(path: str, pictures, folder: str) -> onnx.ModelProto:
    """The same network in bytes, as ONNX Runtime's own tool makes it from what its optimiser leaves."""
    plain, made = os.path.join(folder, "plain.onnx"), os.path.join(folder, "bytes.onnx")
    options = ort.SessionOptions()
    options.graph_optimization_level = ort.GraphOptimizationLevel.ORT_ENABLE_BASIC
    options.optimized_model_filepath = plain
    ort.InferenceSession(path, options)
    quantize_static(plain, made, Pictures(pictures), quant_format=QuantFormat.QDQ, per_channel=True, reduce_range=True,
                    activation_type=QuantType.QUInt8, weight_type=QuantType.QInt8, op_types_to_quantize=IN_BYTES)
    return onnx.load(made)


def with_stored_weights(model: onnx.ModelProto, source: onnx.ModelProto) -> onnx.ModelProto:
    """Puts in place of each weight in bytes the weight as `source` stores it, and what makes bytes of that."""
    stored, tensors = {}, {tensor.name: tensor for tensor in source.graph.initializer}
    for node in source.graph.node:
        if node.op_type == "Cast" and node.input[0] in tensors:
            stored[node.output[0]] = [node]
        elif node.op_type == "Mul" and node.input[0] in stored and node.input[1] in tensors:
            stored[node.output[0]] = [*stored.pop(node.input[0]), node]
    kept, nodes, renamed = [], [], {}

    def keep(name: str) -> str:
        for node in stored[name]:
            for tensor in (tensors[i] for i in node.input if i in tensors):
                copy = TensorProto()
                copy.CopyFrom(tensor)
                copy.name = f"stored_{tensor.name}"
                kept.append(copy)
            attributes = {each.name: helper.get_attribute_value(each) for each in node.attribute}
            inputs, outputs = ([f"stored_{each}" for each in names] for names in (node.input, node.output))
            nodes.append(helper.make_node(node.op_type, inputs, outputs, **attributes))
        return f"stored_{name}"

    for tensor in model.graph.initializer:
        name = tensor.name.removesuffix("_quantized")
        if name != tensor.name and tensor.data_type == TensorProto.INT8 and name in stored:
            inputs = [keep(name), f"{name}_scale", f"{name}_zero_point"]
            nodes.append(helper.make_node("QuantizeLinear", inputs, [tensor.name], axis=0))
        elif tensor.name in stored:
            renamed[tensor.name] = keep(tensor.name)
        else:
            kept.append(tensor)
    for node in model.graph.node:
        for place, name in enumerate(node.input):
            node.input[place] = renamed.get(name, name)
    graph = helper.make_graph([*nodes, *model.graph.node], model.graph.name, model.graph.input, model.graph.output, kept)
    made = helper.make_model(graph, opset_imports=[helper.make_opsetid("", 17)], producer_name="countermark")
    made.ir_version = 8
    onnx.checker.check_model(made)
    return made


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("patches")
    parser.add_argument("--from", dest="source", required=True)
    parser.add_argument("--out", required=True)
    parser.add_argument("--version", default="2.1.0")
    options = parser.parse_args()
    pictures = np.fromfile(options.patches, dtype=np.float32).reshape(-1, 1, SIDE, SIDE)
    with open(os.path.join(options.source, "model.json")) as file:
        facts = json.load(file)
    facts["version"] = options.version
    for network in facts["networks"]:
        path = os.path.join(options.source, network["file"])
        source = onnx.load(path)
        if not any(node.op_type == "QuantizeLinear" for node in source.graph.node):
            with tempfile.TemporaryDirectory() as folder:
                source = with_stored_weights(quantised(path, pictures, folder), source)
        target = os.path.join(options.out, network["file"])
        onnx.save(source, target)
        with open(target, "rb") as file:
            network["sha256"] = hashlib.sha256(file.read()).hexdigest()
        print(f"{target}: {os.path.getsize(target) / 1e6:.2f} MB")
    with open(os.path.join(options.out, "model.json"), "w") as file:
        file.write(json.dumps(facts, indent=2) + "\n")


if __name__ == "__main__":
    main()
