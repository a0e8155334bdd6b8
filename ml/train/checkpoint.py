"""Reads what train.py writes."""

import torch

from in_bytes import empty_in_bytes
from network import MarkNetwork, PairNetwork


def load_networks(path: str) -> tuple:
    """Both networks with a checkpoint's weights, in single precision, ready to infer."""
    state = torch.load(path, map_location="cpu")
    networks = empty_in_bytes() if state.get("bytes") else MarkNetwork(), PairNetwork()
    for network, name in zip(networks, ("network", "pair")):
        network.load_state_dict({k: v.float() if v.is_floating_point() else v for k, v in state[name].items()})
    return tuple(n.eval() for n in networks)
