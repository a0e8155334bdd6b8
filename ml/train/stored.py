"""The shipped networks, read back from their ONNX files to go on from or to be taught by.

Their normalisation is part of the convolutions there. `fused_from` gives a network without normalisation, as the file
computes it; `renormed` gives one with normalisation that computes the same, to be trained further.
"""

import re

import numpy as np
import onnx
import torch
import torch.nn as nn
from onnx import TensorProto, numpy_helper

from network import MarkNetwork, PairNetwork


def weights_of(path: str) -> dict:
    """Every stored tensor by its name, in single precision, and every convolution's two by '/its/name'."""
    graph = onnx.load(path).graph
    values = {t.name: numpy_helper.to_array(t) for t in graph.initializer}
    for node in graph.node:
        if node.op_type == "Cast" and node.input[0] in values and node.attribute[0].i == TensorProto.FLOAT:
            values[node.output[0]] = values[node.input[0]].astype(np.float32)
        elif node.op_type == "Mul" and all(i in values for i in node.input):
            values[node.output[0]] = values[node.input[0]] * values[node.input[1]]
        elif node.op_type == "Conv":
            values[node.name] = tuple(values[i] for i in node.input[1:])
    return values


def fuse(network: nn.Module) -> nn.Module:
    """Folds every normalisation into the convolution before it, in place; the network must be in evaluation."""
    for parent in list(network.modules()):
        names = dict(parent.named_children())
        pairs = [(a, b) for a, b in zip(names, list(names)[1:]) if isinstance(names[a], nn.Conv2d) and isinstance(names[b], nn.BatchNorm2d)]
        for conv, norm in pairs:
            setattr(parent, conv, nn.utils.fusion.fuse_conv_bn_eval(names[conv], names[norm]))
            setattr(parent, norm, nn.Identity())
    return network


def name_in_file(name: str, first_edition: bool) -> str:
    """fine.1.0.conv1 -> /fine/fine.1/fine.1.0/conv1/Conv, or /body/body.2/conv1/Conv in the first edition's file."""
    if first_edition:
        name = re.sub(r"^fine\.(\d)\.(\d)", lambda m: f"body.{2 * int(m[1]) + int(m[2])}", name)
        name = re.sub(r"^coarse\.(\d)", lambda m: f"body.{6 + int(m[1])}", name)
    parts, path, prefix = name.split("."), [], ""
    for part in parts:
        # A child with a number is written with its parent's name, back to the last that has none.
        prefix = f"{prefix}.{part}" if part.isdigit() else part
        path.append(prefix)
    return "/" + "/".join(path) + "/Conv"


def fused_from(path: str) -> MarkNetwork:
    """The network of a file, without normalisation. The first edition's has no details; `near` and `far` stay as drawn."""
    values = weights_of(path)
    first_edition = any(name.startswith("/body") for name in values)
    network = fuse(MarkNetwork().eval())
    with torch.no_grad():
        for name, module in network.named_modules():
            if not isinstance(module, nn.Conv2d) or (first_edition and name in ("near", "far")):
                continue
            weight, bias = values[name_in_file(name, first_edition)]
            module.weight.copy_(torch.from_numpy(weight.copy()))
            module.bias.copy_(torch.from_numpy(bias.copy()))
        network.project.weight.copy_(torch.from_numpy(values["project.weight"].copy()))
        network.project.bias.copy_(torch.from_numpy(values["project.bias"].copy()))
        network.power.fill_(float(values["power"]))
    return network


def pair_from(path: str) -> PairNetwork:
    values, network = weights_of(path), PairNetwork()
    own = network.state_dict()
    network.load_state_dict({name: torch.from_numpy(np.array(values[name])).to(kept.dtype) for name, kept in own.items()})
    return network.eval()


@torch.no_grad()
def renormed(fused: MarkNetwork, pictures: torch.Tensor) -> MarkNetwork:
    """A network with normalisation that computes on `pictures` what `fused` does.

    Each normalisation's own scale and offset undo what it takes off, measured from the front to the back.
    """
    network = MarkNetwork().to(pictures.device).eval()
    of = dict(fused.named_modules())
    handles = []

    def measure(norm, bias):
        def before(_, inputs):
            x = inputs[0].float()
            mean, var = x.mean((0, 2, 3)), x.var((0, 2, 3), unbiased=False)
            norm.running_mean.copy_(mean)
            norm.running_var.copy_(var)
            norm.weight.copy_((var + norm.eps).sqrt())
            norm.bias.copy_(mean + bias)

        return before

    for name, parent in network.named_modules():
        children = dict(parent.named_children())
        for conv, norm in zip(children, list(children)[1:]):
            if isinstance(children[conv], nn.Conv2d) and isinstance(children[norm], nn.BatchNorm2d):
                there = of[f"{name}.{conv}" if name else conv]
                children[conv].weight.copy_(there.weight)
                handles.append(children[norm].register_forward_pre_hook(measure(children[norm], there.bias)))
    kept = fused.state_dict()
    for name, value in network.state_dict().items():
        if name in kept and value.shape == kept[name].shape:
            value.copy_(kept[name])
    network(pictures)
    for handle in handles:
        handle.remove()
    return network
