"""Designs -> photographs of impressions of them, on whatever device the designs are on.

Every random choice is made per photograph. `severity` 0..1 scales how badly the mark was struck,
worn and photographed: 0.3 is a good reference, 0.6 moderate, 1.0 hard. Two families of surface
are drawn for every photograph and one is kept: ink (printed, woven, painted, branded) and relief
(struck, cast, impressed), lit from a direction with diffuse and mirror-like light. `hazards` 0..1
scales how often a photograph shows what does not belong to the mark's own wear and light: a
second strike, another mark close by, a slanted strike, the edge of the object, block coding.
"""

import math

import torch
import torch.nn.functional as F

from network import SIDE as S


def between(like, low, high):
    """Uniform [n, 1, 1, 1]; the bounds may be numbers or [n, 1, 1, 1]."""
    return low + (high - low) * torch.rand(like.shape[0], 1, 1, 1, device=like.device)


def coin(like, probability):
    return (torch.rand(like.shape[0], 1, 1, 1, device=like.device) < probability).float()


def noise(like, cells: int, channels: int = 1):
    """Smooth noise of unit strength with about `cells` bumps a side."""
    x = torch.randn(like.shape[0], channels, cells, cells, device=like.device)
    return x if cells == S else F.interpolate(x, size=(S, S), mode="bicubic", align_corners=False)


def blur(x, sigma, reach: int = 6):
    """Gaussian blur with a sigma of its own for each picture, sigma [n, 1, 1, 1]."""
    t = torch.arange(-reach, reach + 1, device=x.device, dtype=x.dtype)
    k = torch.exp(-t * t / (2 * sigma.view(-1, 1).clamp_min(0.05) ** 2))
    k = (k / k.sum(1, keepdim=True))[:, :, None, None, None]
    for axis in (2, 3):
        size = x.shape[axis]
        padded = F.pad(x, (0, 0, reach, reach) if axis == 2 else (reach, reach, 0, 0), mode="reflect")
        y = padded.narrow(axis, 0, size) * k[:, 0]
        for i in range(1, 2 * reach + 1):
            y = y + padded.narrow(axis, i, size) * k[:, i]
        x = y
    return x


def grid_of(like, severity, rotation):
    """Where each pixel looks in the design: turn, scale, shear, shift, perspective, bending."""
    n, device = like.shape[0], like.device
    s = severity.view(n)
    unit = lambda: torch.rand(n, device=device) * 2 - 1
    angle = unit() * rotation.view(n)
    scale = 1 + torch.rand(n, device=device) * 0.75 * s
    aspect = torch.exp(unit() * 0.18 * s)
    c, d = torch.cos(angle), torch.sin(angle)
    rows = [
        torch.stack([c * aspect * scale, (-d + unit() * 0.15 * s) * scale, unit() * 0.22 * s], 1),
        torch.stack([d * scale, c / aspect * scale, unit() * 0.22 * s], 1),
        torch.stack([unit() * 0.22 * s, unit() * 0.22 * s, torch.ones_like(s)], 1),
    ]
    a = torch.stack(rows, 1)
    line = (torch.arange(S, device=device) + 0.5) * (2 / S) - 1
    y, x = line[:, None].expand(S, S), line[None, :].expand(S, S)
    points = torch.stack([x, y, torch.ones_like(x)], -1).reshape(1, -1, 3)
    q = (points[:, :, None, :] * a[:, None, :, :]).sum(-1)
    flat = (q[..., :2] / q[..., 2:].clamp_min(0.3)).view(n, S, S, 2)
    bend = noise(like, 4, 2) * between(like, 0, 0.075) + noise(like, 9, 2) * between(like, 0, 0.02)
    return flat + (bend * severity).permute(0, 2, 3, 1)


def in_threads(m, severity):
    """Woven or embroidered: some of the drawings as threads of a coarse grid carry them."""
    cells = [F.interpolate(F.interpolate(m, size=(k, k), mode="area"), size=m.shape[-2:], mode="nearest") for k in (40, 56)]
    coarse = torch.where(torch.rand(m.shape[0], 1, 1, 1, device=m.device) < 0.5, cells[0], cells[1])
    some = coin(m, 0.12 * severity)
    return m * (1 - some) + (coarse > 0.45).float() * some


def struck(m, severity, rotation, hazards: float):
    """How much ink or metal is where, 0..1: threads, stroke weight, outline, geometry, second strike, wear."""
    m = in_threads(m, severity)
    outlined = coin(m, 0.22 * (severity * 1.4).clamp(max=1))
    core = blur(m, between(m, 1.2, 2.6))
    m = m * (1 - outlined) + (m * (1 - core) * 3.2).clamp(0, 1) * outlined
    m = blur(m, between(m, 0.3, 0.3 + 1.7 * severity))
    m = torch.sigmoid((m - between(m, 0.5 - 0.33 * severity, 0.5 + 0.22 * severity)) * 14)
    grid = grid_of(m, severity, rotation)
    first = F.grid_sample(m, grid, mode="bilinear", padding_mode="zeros", align_corners=False)

    # The tool bounced (the same mark, a little off), or another mark stands close by.
    double = coin(m, 0.12 * severity * hazards)
    near = coin(m, 0.12 * severity * hazards) * (1 - double)
    way = between(m, 0, 2 * math.pi)
    far = between(m, 0.03, 0.14) * double + between(m, 1.7, 2.3) * near
    shift = torch.cat([torch.cos(way), torch.sin(way)], -1) * far
    source = m * double + torch.roll(m, 1, 0) * (1 - double)
    second = F.grid_sample(source, grid + shift, mode="bilinear", padding_mode="zeros", align_corners=False)
    m = torch.maximum(first, second * (double * between(m, 0.2, 0.8) + near))

    patchy = noise(m, 7) * 0.8 + noise(m, 23) * 0.5 + between(m, 2.2 - 2.2 * severity, 4.5 - 1.5 * severity)
    m = m * (1 - coin(m, 0.8 * severity) * (1 - torch.sigmoid(patchy * 3)))
    # Struck at a slant: one side did not take.
    line = (torch.arange(S, device=m.device, dtype=m.dtype) + 0.5) / S * 2 - 1
    slope = line.view(1, 1, 1, S) * torch.cos(way) + line.view(1, 1, S, 1) * torch.sin(way)
    took = torch.sigmoid((slope + between(m, 0.25, 1.0)) * between(m, 3, 14))
    return m * (1 - coin(m, 0.15 * severity * hazards) * (1 - took))


def ink_on(m, texture, severity):
    """Printed, woven or painted: two tones and the ground's texture."""
    x = torch.arange(S, device=m.device, dtype=m.dtype)
    ground = between(m, 0.1, 0.9)
    gap = between(m, 0.25, 0.8)
    lighter = ground + gap
    darker = ground - gap
    light = (torch.rand_like(ground) < 0.3) | (darker < -0.1)
    light = light & ((lighter < 1.1) | (darker < -0.1))
    tone = torch.where(light, lighter, darker).clamp(0.02, 0.98)
    mottled = tone + noise(m, 18) * between(m, 0, 0.12) * severity + noise(m, 4) * between(m, 0, 0.12) * severity
    picture = ground * (1 - m) + mottled * m + texture * severity
    step = between(m, 0.6, 1.9)
    weave = torch.sin(x.view(1, 1, S, 1) * step) * torch.sin(x.view(1, 1, 1, S) * step * between(m, 0.7, 1.3))
    return picture * (1 + weave * between(m, 0, 0.3) * coin(m, 0.2) * severity)


def lamp(like):
    """A light's direction, unit length: x, y, z."""
    around, above = between(like, 0, 2 * math.pi), between(like, 0.35, 1.25)
    return torch.cos(around) * torch.cos(above), torch.sin(around) * torch.cos(above), torch.sin(above)


def relief_of(m, texture, brushed, severity):
    """Struck, cast or impressed: a height with lights on it, a room mirrored in it, patina in its hollows."""
    raised = torch.where(torch.rand(m.shape[0], 1, 1, 1, device=m.device) < 0.6, -1.0, 1.0)
    edge = blur(m, between(m, 0.6, 2.2))
    dome = F.interpolate(F.avg_pool2d(m, 8), size=(S, S), mode="bicubic", align_corners=False)
    height = (edge * between(m, 1.5, 6) + dome * between(m, 0, 7) * coin(m, 0.35)) * raised
    height = height + noise(m, 14) * between(m, 0, 0.5) * severity + noise(m, 50) * between(m, 0, 0.25) * severity
    height = height + brushed * between(m, 0, 0.2) * coin(m, 0.3)
    # The object itself is seldom flat: a button's dome, a spoon's neck, dents.
    line = (torch.arange(S, device=m.device, dtype=m.dtype) + 0.5) / S * 2 - 1
    x, y = line.view(1, 1, 1, S), line.view(1, 1, S, 1)
    body = coin(m, 0.6) * severity
    bow = between(m, -1.1, 1.1) * body
    way = between(m, 0, math.pi)
    along = x * torch.cos(way) + y * torch.sin(way)
    both = coin(m, 0.4)
    dented = noise(m, 5, 2) * between(m, 0, 0.25) * body
    dx = F.pad(height[..., 2:] - height[..., :-2], (1, 1, 0, 0)) + bow * (along * torch.cos(way) * (1 - both) + x * both) + dented[:, :1]
    dy = F.pad(height[..., 2:, :] - height[..., :-2, :], (0, 0, 1, 1)) + bow * (along * torch.sin(way) * (1 - both) + y * both) + dented[:, 1:]
    nz = torch.rsqrt(dx * dx + dy * dy + 1)
    lx, ly, lz = lamp(m)
    diffuse = (-dx * lx - dy * ly + lz) * nz
    half = torch.rsqrt(2 + 2 * lz)  # the light's and the eye's middle direction, unit length
    shine = (((-dx * lx - dy * ly) + lz + 1) * nz * half).clamp(1e-4, 1) ** between(m, 6, 90)
    fx, fy, fz = lamp(m)
    fill = (-dx * fx - dy * fy + fz) * nz * between(m, 0, 0.6) * coin(m, 0.4)
    wave = lambda: torch.sin(-dx * nz * between(m, -4, 4) - dy * nz * between(m, -4, 4) + between(m, 0, 6.3))
    room = wave() + 0.6 * wave()
    polished = coin(m, 0.35)
    dirt = m - edge
    picture = between(m, 0.25, 0.7) * (diffuse.clamp_min(0) * 0.9 + fill.clamp_min(0) + 0.15)
    picture = picture * (1 - 0.5 * polished) + shine * between(m, 0, 0.5 + 0.3 * severity)
    picture = picture + room * (between(m, 0, 0.2) * coin(m, 0.3) + between(m, 0.05, 0.22) * polished)
    # Handling polishes what stands up; what lies deep keeps its dark.
    deep = (F.interpolate(F.avg_pool2d(height, 16), size=(S, S), mode="bicubic", align_corners=False) - height) * 0.25
    picture = picture * (1 - torch.sigmoid(deep * 3 - 0.5) * between(m, 0, 0.6) * coin(m, 0.45))
    picture = picture - m * between(m, -0.05, 0.28) * coin(m, 0.6) + dirt * between(m, -0.4, 0.4) * coin(m, 0.4)
    return picture + texture * severity


def lit_and_handled(picture, texture, severity, hazards: float):
    """Uneven light, flash, scratches, the edge of the object, things in front."""
    axis = torch.arange(S, device=picture.device, dtype=picture.dtype)
    x, y = axis.view(1, 1, 1, S), axis.view(1, 1, S, 1)
    fall = (x / S - 0.5) * between(picture, -1, 1) + (y / S - 0.5) * between(picture, -1, 1)
    picture = picture * (1 + fall * between(picture, 0, 0.7) * severity)
    at = lambda low, high: between(picture, low, high)
    cx, cy, r = at(0, S), at(0, S), at(8, 30)
    flash = torch.exp(-((x - cx) ** 2 + (y - cy) ** 2) / (2 * r * r))
    picture = picture + flash * at(0, 0.7) * coin(picture, 0.3 * severity)
    for _ in range(2):
        a = at(0, math.pi)
        d = (x - at(0, S)) * torch.cos(a) + (y - at(0, S)) * torch.sin(a)
        scratch = torch.exp(-d * d / (2 * at(0.5, 1.6) ** 2))
        picture = picture + scratch * at(-0.5, 0.5) * coin(picture, 0.4 * severity)
    a = at(0, 2 * math.pi)
    shade = torch.sigmoid(((x - S / 2) * torch.cos(a) + (y - S / 2) * torch.sin(a) - at(-60, 60)) * at(0.08, 1))
    picture = picture * (1 - shade * at(0.1, 0.6) * coin(picture, 0.2 * severity * hazards))
    a = at(0, 2 * math.pi)
    beyond = torch.sigmoid(((x - S / 2) * torch.cos(a) + (y - S / 2) * torch.sin(a) - at(55, 85)) * at(0.3, 2))
    picture = picture + beyond * at(-0.6, 0.6) * coin(picture, 0.25 * severity * hazards)
    for _ in range(2):
        cx, cy, ex, ey = at(0, S), at(0, S), at(6, 34), at(6, 34)
        inside = torch.sigmoid((1 - ((x - cx) / ex) ** 2 - ((y - cy) / ey) ** 2) * 8)
        hidden = inside * coin(picture, 0.35 * severity)
        picture = picture * (1 - hidden) + hidden * (at(0, 1) + texture)
    return picture


def compressed(picture, severity, hazards: float):
    """What an 8 x 8 block transform coder leaves, in some of the pictures."""
    n = torch.arange(8, device=picture.device, dtype=picture.dtype)
    basis = torch.cos(math.pi * (n[None] + 0.5) * n[:, None] / 8) * 0.5
    basis = torch.where(n[:, None] == 0, torch.full_like(basis, math.sqrt(1 / 8)), basis)
    blocks = picture.view(-1, S // 8, 8, S // 8, 8).permute(0, 1, 3, 2, 4)
    coefficients = basis @ blocks @ basis.t()
    step = (0.01 + 0.012 * (n[None] + n[:, None])) * between(picture, 0.3, 3).unsqueeze(-1)
    coefficients = torch.round(coefficients / step) * step
    back = (basis.t() @ coefficients @ basis).permute(0, 1, 3, 2, 4).reshape(picture.shape)
    some = coin(picture, 0.3 * severity * hazards)
    return picture * (1 - some) + back * some


def sharpened(picture, severity, hazards: float):
    """What a telephone does to edges, in some of the pictures: more of what a small blur takes away."""
    soft = F.avg_pool2d(F.pad(picture, (1, 1, 1, 1), mode="reflect"), 3, 1)
    return picture + (picture - soft) * between(picture, 0.3, 2.5) * coin(picture, 0.3 * severity * hazards)


def photograph(m, severity, rotation, hazards: float = 1.0):
    """Drawings float [n, 1, 128, 128], severity and rotation (radians, either way) [n, 1, 1, 1] -> float [n, 1, 160, 160], 0..1."""
    m = struck(m, severity, rotation, hazards)
    n = m.shape[0]
    texture = noise(m, 9) * between(m, 0, 0.10) + noise(m, 40) * between(m, 0, 0.08) + noise(m, S) * between(m, 0, 0.05)
    strokes = torch.randn(n, 1, S, 4, device=m.device)
    brushed = F.interpolate(strokes, size=(S, S), mode="bilinear", align_corners=False)
    texture = texture + brushed * between(m, 0, 0.08) * coin(m, 0.3)
    relief = coin(m, 0.55)
    picture = ink_on(m, texture, severity) * (1 - relief) + relief_of(m, texture, brushed, severity) * relief
    picture = lit_and_handled(picture, texture, severity, hazards)
    picture = blur(picture, between(m, 0.1, 0.1 + 2.0 * severity))
    picture = sharpened(picture, severity, hazards)
    picture = picture + torch.randn_like(picture) * between(m, 0, 0.01 + 0.08 * severity)
    picture = picture * torch.exp(between(m, -0.2, 0.35) * coin(m, 0.4) * severity)
    picture = picture.clamp(0, 1) ** torch.exp(between(m, -0.4, 0.4))
    return compressed(picture, severity, hazards).clamp(0, 1)


def standardise(picture):
    """As preprocess.py does it: (x - mean) / (standard deviation + 0.02), each picture by itself."""
    mean = picture.mean((1, 2, 3), keepdim=True)
    deviation = picture.std((1, 2, 3), keepdim=True, unbiased=False)
    return (picture - mean) / (deviation + 0.02)


def turned(picture, degrees: float):
    """The picture turned about its centre, mirrored past its edges."""
    if degrees % 360 == 0:
        return picture
    t = math.radians(degrees)
    rows = [[math.cos(t), -math.sin(t), 0], [math.sin(t), math.cos(t), 0]]
    a = torch.tensor(rows, device=picture.device, dtype=picture.dtype).expand(len(picture), 2, 3)
    grid = F.affine_grid(a, list(picture.shape), align_corners=False)
    return F.grid_sample(picture, grid, padding_mode="reflection", align_corners=False)
