"""The mark network computed with bytes, and trained to bear it.

Between convolutions, activations are rounded to 256 steps, and the weights of convolutions to 127 for each output
channel: seven of eight bits, because processors without instructions for sums of bytes add two products in 16 bits,
which eight would overflow, and the answer would depend on the machine. In training rounded numbers are computed with,
and gradients pass as if they were not (straight-through estimation; Bengio et al., 2013, arXiv 1308.3432). The first
convolution, the gates and the last layers, a hundredth of the work, stay in single precision.
"""

import torch
import torch.nn as nn
import torch.nn.functional as F

from network import Block, MarkNetwork
from stored import fuse

STEPS = 255
WEIGHT_STEPS = 63
SAMPLES = 200_000


class Rounded(nn.Module):
    """Rounds to 256 steps from `low`, a whole number of steps below 0, up. Ranges are read while `watching`."""

    def __init__(self):
        super().__init__()
        self.register_buffer("low", torch.tensor(0.0))
        self.register_buffer("step", torch.tensor(1.0))
        self.watching, self.seen, self.exporting = False, [], False

    def forward(self, x):
        if self.exporting:
            zero = int(round(float(-self.low / self.step)))
            return torch.fake_quantize_per_tensor_affine(x, float(self.step), zero, 0, STEPS)
        x = x.float()
        if self.watching:
            flat = x.detach().flatten()
            self.seen.append(flat[torch.randint(len(flat), (SAMPLES,), device=flat.device)])
            return x
        held = x.clamp(self.low, self.low + STEPS * self.step)
        return held + (torch.round((held - self.low) / self.step) * self.step + self.low - held).detach()

    def settle(self) -> None:
        """The range that rounds what was seen with the least mean square error."""
        x = torch.cat(self.seen)
        self.seen, least = [], None
        low, high = min(0.0, x.min().item()), max(1e-6, x.max().item())
        for share in torch.linspace(0.2, 1.0, 41).tolist():
            step = (high - low) * share / STEPS
            bottom = -round(-low * share / step) * step
            held = x.clamp(bottom, bottom + STEPS * step)
            error = ((torch.round((held - bottom) / step) * step + bottom - x) ** 2).mean().item()
            if least is None or error < least:
                least = error
                self.low.fill_(bottom)
                self.step.fill_(step)


class ByteConv(nn.Conv2d):
    """A convolution with rounded weights; as they stand while `exporting`."""

    exporting = False

    @classmethod
    def of(cls, conv: nn.Conv2d):
        made = cls(conv.in_channels, conv.out_channels, conv.kernel_size, conv.stride, conv.padding)
        made.load_state_dict(conv.state_dict())
        return made

    def scales(self):
        """One for each output channel, [outputs, 1, 1, 1]."""
        return self.weight.detach().abs().amax((1, 2, 3), keepdim=True).clamp_min(1e-8) / WEIGHT_STEPS

    def rounded(self):
        scale = self.scales()
        return self.weight + (torch.round(self.weight / scale) * scale - self.weight).detach()

    def forward(self, x):
        return self._conv_forward(x, self.weight if self.exporting else self.rounded(), self.bias)


class ByteBlock(nn.Module):
    """A block of the mark network, its input rounded already."""

    def __init__(self, block: Block, last: bool):
        super().__init__()
        self.conv1, self.conv2 = ByteConv.of(block.conv1), ByteConv.of(block.conv2)
        self.between, self.after = Rounded(), Rounded()
        self.gate = block.gate
        self.pool = self.short = None
        if block.short is not None:
            self.pool = nn.Sequential(block.short[0], Rounded())
            self.short = nn.Sequential(ByteConv.of(block.short[1]), Rounded())
        self.out = nn.Identity() if last else Rounded()

    def forward(self, x):
        y = self.between(F.relu(self.conv1(x)))
        y = self.after(self.conv2(y))
        y = y * self.gate(y)
        return self.out(F.relu(y + (x if self.short is None else self.short(self.pool(x)))))


def in_bytes(fused: MarkNetwork) -> MarkNetwork:
    """The same network with bytes between its convolutions; ranges are still to be read with `watched`. In place."""
    stem = fused.stem
    fused.stem = nn.Sequential(stem[0], nn.ReLU(), Rounded(), ByteConv.of(stem[3]), nn.ReLU(), Rounded())
    fused.fine = nn.Sequential(*(nn.Sequential(*(ByteBlock(block, False) for block in stage)) for stage in fused.fine))
    blocks = list(fused.coarse)
    fused.coarse = nn.Sequential(*(ByteBlock(block, block is blocks[-1]) for block in blocks))
    return fused


def empty_in_bytes() -> MarkNetwork:
    return in_bytes(fuse(MarkNetwork().eval()))


@torch.no_grad()
def watched(network: MarkNetwork, batches) -> None:
    """Reads every range off batches of pictures, float [n, 1, 160, 160]."""
    roundings = [m for m in network.modules() if isinstance(m, Rounded)]
    for each in roundings:
        each.watching = True
    for pictures in batches:
        network(pictures)
    for each in roundings:
        each.watching = False
        each.settle()
