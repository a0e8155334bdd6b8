"""Figures in PyTorch, while training: recall of designs never seen, absent marks, likeness.

    python3 measure.py CHECKPOINT --designs DIR [--likeness FILE] [--split validation|test]

The shipped file is measured by `npm run evaluate`, on photographs written by own_test.py; this is
the quicker look from within training, on the same renderer.
"""

import argparse
import json
import math
import os

import torch

from designs import load, unpack
from checkpoint import load_networks
from render import photograph, standardise, turned

TURNS = 12
REFERENCE = (0.3, 0.15)
CHUNK = 250


def shots(packed, severity: float, rotation: float, hazards: float = 1.0):
    """Photographs of every design, float [n, 1, 160, 160], 0..1."""
    full = lambda n, value: torch.full((n, 1, 1, 1), value, device=packed.device)
    parts = packed.split(CHUNK)
    return torch.cat([photograph(unpack(p), full(len(p), severity), full(len(p), rotation), hazards) for p in parts])


def embed(network, pictures):
    """Vectors [n, 256] and details [n, 64, 10, 10]."""
    parts = [network(standardise(p)) for p in pictures.split(CHUNK)]
    return torch.cat([z for z, _ in parts]), torch.cat([t for _, t in parts])


class Asked:
    """Queries in twelve turns, against references: cosines, and the pair network's log-odds for the best."""

    def __init__(self, network, pair, queries, references):
        self.pair = pair
        self.rz, self.rt = embed(network, references)
        turns = [embed(network, turned(queries, 360 / TURNS * k)) for k in range(TURNS)]
        best = torch.stack([z @ self.rz.t() for z, _ in turns]).max(0)
        self.cosines, self.turn = best.values, best.indices
        self.details = torch.stack([t for _, t in turns])

    def log_odds(self, places):
        """places int64 [queries, k] -> log-odds [queries, k] that query and reference show one mark."""
        n, k = places.shape
        rows = torch.arange(n, device=places.device)[:, None].expand(n, k)
        out = []
        for r, c in zip(rows.split(50), places.split(50)):
            turn = self.turn[r, c]
            q, t = self.details[turn, r].flatten(0, 1), self.rt[c].flatten(0, 1)
            out.append(self.pair(q, t, self.cosines[r, c].flatten()).view(c.shape))
        return torch.cat(out)

    def reranked(self, weight: float, most: int = 50):
        """The cosines, with what the pair network thinks of each query's best put above all others."""
        best = self.cosines.topk(min(most, self.cosines.shape[1]), 1)
        score = torch.full_like(self.cosines, -1e3) + self.cosines
        return score.scatter(1, best.indices, self.log_odds(best.indices) + weight * best.values)


def recalls(s):
    """Recall@1, @5, @10 where query i belongs to reference i."""
    rank = (s > s.diag()[:, None]).sum(1)
    return [round((rank < k).float().mean().item(), 4) for k in (1, 5, 10)]


def area(present, absent) -> float:
    """Probability that a present mark's best similarity is above an absent mark's."""
    return ((present[:, None] > absent[None]).float() + 0.5 * (present[:, None] == absent[None]).float()).mean().item()


@torch.no_grad()
def figures(network, pair, packed, seed: int = 5) -> dict:
    """The first 1,000 designs are references; the next are absent. Any rotation. By cosine, and re-ranked."""
    torch.manual_seed(seed)
    known, unknown = packed[:1000], packed[1000:2000]
    references = shots(known, *REFERENCE)
    out = {}
    for name, severity in (("moderate", 0.6), ("hard", 1.0)):
        asked = Asked(network, pair, shots(known, severity, math.pi), references)
        absent = Asked(network, pair, shots(unknown, severity, math.pi), references)
        top = lambda s: s.max(1).values
        out[name] = recalls(asked.cosines)
        out[f"{name} auroc"] = round(area(top(asked.cosines), top(absent.cosines)), 4)
        for weight in (0, 20):
            one, none = asked.reranked(weight), absent.reranked(weight)
            out[f"{name} pairs+{weight}"] = [*recalls(one), round(area(top(one), top(none)), 4)]
    return out


@torch.no_grad()
def told_apart(network, pair, packed, seed: int = 7) -> dict:
    """Near twins, drawings 2k and 2k + 1: how often a photograph is nearer to its own reference than to the twin's."""
    torch.manual_seed(seed)
    own = torch.arange(len(packed), device=packed.device)
    places = torch.stack([own, own ^ 1], 1)
    references = shots(packed, *REFERENCE)
    out = {}
    for name, severity in (("good", 0.3), ("moderate", 0.6)):
        asked = Asked(network, pair, shots(packed, severity, math.pi), references)
        cosines, odds = asked.cosines.gather(1, places), asked.log_odds(places)
        right = lambda s: round((s[:, 0] > s[:, 1]).float().mean().item(), 4)
        out[f"twins {name}"] = [right(cosines), right(odds)]
    return out


def logistic(score, right):
    """Slope and offset of the logistic curve of right against similarity (Newton's method)."""
    x = torch.stack([score.double(), torch.ones_like(score).double()], 1)
    y, w = right.double(), torch.zeros(2, dtype=torch.double, device=score.device)
    for _ in range(100):
        p = torch.sigmoid(x @ w)
        h = x.t() @ (x * (p * (1 - p))[:, None]) + 1e-6 * torch.eye(2, device=x.device)
        w = w + torch.linalg.solve(h, x.t() @ (y - p))
    return w[0].item(), w[1].item()


def similarity_at(curve, probability: float) -> float:
    slope, offset = curve
    return round((math.log(probability / (1 - probability)) - offset) / slope, 3)


@torch.no_grad()
def likeness(network, pair, packed, seed: int = 6) -> dict:
    """Thresholds on the best similarity, read off held-out designs: as many present as absent queries."""
    torch.manual_seed(seed)
    known, unknown = packed[:1000], packed[1000:2000]
    references = shots(known, *REFERENCE)
    score, right = [], []
    for severity in (0.3, 0.6, 0.8, 1.0):
        s = Asked(network, pair, shots(known, severity, math.pi), references).cosines.max(1)
        score.append(s.values)
        right.append(s.indices == torch.arange(len(known), device=packed.device))
        t = Asked(network, pair, shots(unknown, severity, math.pi), references).cosines.max(1)
        score.append(t.values)
        right.append(torch.zeros_like(t.indices, dtype=torch.bool))
    curve = logistic(torch.cat(score), torch.cat(right))
    return {
        "veryClose": similarity_at(curve, 0.97),
        "close": similarity_at(curve, 0.75),
        "some": similarity_at(curve, 0.25),
        "noneBelow": similarity_at(curve, 0.5),
        "how": "Cosine of the best reference over 12 turns of the query. A logistic curve of 'the best match is "
               "right' against that cosine, read off validation designs: 1,000 as references, and one photograph "
               "each of these and of 1,000 others, at severities 0.3, 0.6, 0.8 and 1.0, at any rotation. It "
               "crosses 0.97 at veryClose, 0.75 at close, 0.5 at noneBelow and 0.25 at some. Not calibrated "
               "probabilities: on real photographs and with other numbers of references they move.",
    }


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("checkpoint")
    parser.add_argument("--designs", required=True)
    parser.add_argument("--split", default="test", choices=["validation", "test"])
    parser.add_argument("--likeness", help="also write the thresholds, from the validation designs, here")
    options = parser.parse_args()
    device = "cuda" if torch.cuda.is_available() else "cpu"
    network, pair = (n.to(device) for n in load_networks(options.checkpoint))
    packed = load(os.path.join(options.designs, f"{options.split}.bin.gz"), device)
    print(options.split, json.dumps(figures(network, pair, packed)), flush=True)
    if options.likeness:
        validation = load(os.path.join(options.designs, "validation.bin.gz"), device)
        found = likeness(network, pair, validation)
        with open(options.likeness, "w") as file:
            json.dump(found, file)
        print(json.dumps({k: v for k, v in found.items() if k != "how"}), flush=True)


if __name__ == "__main__":
    main()
