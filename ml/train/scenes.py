"""Designs -> whole photographs with a mark somewhere in them, and the true box of the mark.

    python3 scenes.py OUT --designs DIR [--split test] [--count 1000] [--seed 7]

writes OUT/s0001.webp ... and OUT/regions.json, the folder that `npm run evaluate -- --regions OUT`
reads: a list of {file, boxes}, each box [x, y, width, height] in pixels, the mark that counts first;
no box where the photograph shows no mark.

A scene is a square canvas of 192 pixels. It shows a table, an object on it and perhaps a label or a
cartouche on that, each with a tone, a texture and an edge; a mark that is ink or relief, its drawing
12 to 95 % of the canvas, anywhere, turned any way; sometimes a smaller second mark, a scale bar, cut-off
lettering, seams, rings, fingers; all lit from one side, with shadow, glare and shallow focus. Photographs
are of several shapes: what lies outside the shape is cut away.

The box is the upright box round the warped drawing, before wear, ink spread and light touch it. It is
computed from points of the design's outline, not read off the picture.
"""

import argparse
import json
import math
import os
from typing import NamedTuple

import torch
import torch.nn.functional as F

from designs import PIXELS, load, unpack
from render import between, blur, coin

SIDE = 192
NO_MARK = 0.07
SHAPES = (1, 4 / 3, 3 / 2, 16 / 9)


class Scenes(NamedTuple):
    """n scenes. Boxes are [left, top, right, bottom] in canvas pixels."""

    pictures: torch.Tensor  # [n, 1, 192, 192], 0..1
    visible: torch.Tensor  # [n, 1, 192, 192], 1 where the photograph is
    boxes: torch.Tensor  # [n, 2, 4]: the mark that counts, the other one
    shown: torch.Tensor  # [n, 2]: 1 where there is such a mark
    frame: torch.Tensor  # [n, 2]: half the photograph's width and height, in units of half the canvas


def noise(like, rows: int, columns: int | None = None, channels: int = 1):
    """Smooth noise of unit strength with about so many bumps down and across."""
    x = torch.randn(like.shape[0], channels, rows, columns or rows, device=like.device)
    return F.interpolate(x, size=(SIDE, SIDE), mode="bicubic", align_corners=False)


def lines(like):
    """Canvas coordinates from -1 to 1: x [1, 1, 1, 192] and y [1, 1, 192, 1]."""
    line = (torch.arange(SIDE, device=like.device, dtype=torch.float32) + 0.5) * (2 / SIDE) - 1
    return line.view(1, 1, 1, SIDE), line.view(1, 1, SIDE, 1)


def scalars(n: int, device):
    """A source of n random numbers between two bounds, shaped [n]."""
    return lambda low, high: low + (high - low) * torch.rand(n, device=device)


def outline_points(drawing):
    """[n, 1, 128, 128] -> [n, 512, 2], the first and last inked pixel edge of every row and column, -1..1."""
    ink = drawing[:, 0] > 0
    ramp = torch.arange(PIXELS, device=drawing.device, dtype=torch.float32)
    line = (ramp + 0.5) * (2 / PIXELS) - 1
    points = []
    for axis in (1, 2):
        there = ink.any(axis, keepdim=True)
        at = ramp.view(1, -1, 1) if axis == 1 else ramp.view(1, 1, -1)
        first = torch.where(ink, at, torch.full_like(at, PIXELS)).amin(axis)
        last = torch.where(ink, at + 1, torch.zeros_like(at)).amax(axis)
        for edge in (first, last):
            moving = edge * (2 / PIXELS) - 1
            still = line.expand_as(moving)
            pair = torch.stack([still, moving] if axis == 1 else [moving, still], -1)
            points.append(torch.where(there.squeeze(axis)[..., None], pair, torch.full_like(pair, math.nan)))
    points = torch.cat(points, 1)
    middle = torch.nanmean(points, 1, keepdim=True).nan_to_num(0)
    return torch.where(points.isnan(), middle, points)


def through(h, points):
    """Points [n, k, 2] through homographies [n, 3, 3]."""
    q = torch.cat([points, torch.ones_like(points[..., :1])], -1) @ h.transpose(1, 2)
    return q[..., :2] / q[..., 2:].clamp_min(0.2)


def box_of(points):
    return torch.cat([points.amin(1), points.amax(1)], 1)


def moved(h, scale, shift):
    """The homographies followed by a scaling [n] and a shift [n, 2]."""
    zero, one = torch.zeros_like(scale), torch.ones_like(scale)
    rows = [torch.stack([scale, zero, shift[:, 0]], 1), torch.stack([zero, scale, shift[:, 1]], 1)]
    return torch.stack([*rows, torch.stack([zero, zero, one], 1)], 1) @ h


def stance(n: int, device, severity):
    """How a mark lies before it is scaled and moved: turned, stretched, sheared, seen at a slant. [n, 3, 3]"""
    at = scalars(n, device)
    angle = at(-math.pi, math.pi)
    # Half of the photographs are held the right way up, or on a side, by a few degrees.
    upright = torch.randint(4, (n,), device=device) * (math.pi / 2) * (at(0, 1) < 0.3) + at(-0.2, 0.2)
    angle = torch.where(at(0, 1) < 0.5, upright, angle)
    stretch = torch.exp(at(-0.3, 0.3) + at(-0.35, 0.35) * (at(0, 1) < 0.2))
    c, d = torch.cos(angle), torch.sin(angle)
    zero = torch.zeros_like(c)
    slant = 0.16 * severity.view(n)
    rows = [
        torch.stack([c * stretch, -d / stretch + at(-0.12, 0.12) * severity.view(n), zero], 1),
        torch.stack([d * stretch, c / stretch, zero], 1),
        torch.stack([at(-1, 1) * slant, at(-1, 1) * slant, torch.ones_like(c)], 1),
    ]
    return torch.stack(rows, 1), angle


def frames(n: int, device):
    """Half the width and height of the photograph, [n, 2], the longer 1."""
    at = scalars(n, device)
    shape = torch.tensor(SHAPES, device=device)[torch.randint(len(SHAPES), (n,), device=device)]
    short, upright = 1 / shape, at(0, 1) < 0.45
    one = torch.ones_like(short)
    return torch.stack([torch.where(upright, short, one), torch.where(upright, one, short)], 1)


def settle(h, points, frame, size, low=None, high=None):
    """Scales to `size` (the box's longer side, as a part of the canvas's) and moves it into the frame.

    Sometimes the edge of the photograph cuts a little off. Returns the homographies and the boxes."""
    n, at = len(h), scalars(len(h), h.device)
    box = box_of(through(h, points))
    extent = (box[:, 2:] - box[:, :2]).clamp_min(0.05)
    scale = torch.minimum(2 * size / extent.amax(1), (1.94 * frame / extent).amin(1))
    half = extent * scale[:, None] / 2
    cut = 0.16 * half * (at(0, 1) < 0.06)[:, None]
    reach = (frame - half + cut).clamp_min(0)
    # As often near the middle as anywhere.
    spread = torch.where(at(0, 1) < 0.5, at(0.05, 0.5), torch.ones_like(size))[:, None]
    centre = reach * (torch.rand(n, 2, device=h.device) * 2 - 1) * spread
    if low is not None:
        centre = low + (high - low) * torch.rand(n, 1, device=h.device)
    shift = centre - (box[:, :2] + box[:, 2:]) / 2 * scale[:, None]
    h = moved(h, scale, shift)
    return h, box_of(through(h, points))


def bend_at(bend, points):
    """The bending [n, 2, 192, 192] at canvas points [n, k, 2]."""
    there = F.grid_sample(bend, points[:, :, None], mode="bilinear", padding_mode="border", align_corners=False)
    return there[..., 0].transpose(1, 2)


def laid(drawing, h, bend, points):
    """The drawing as it lies on the canvas, 0..1, and the upright box round it [n, 4], -1..1."""
    x, y = lines(drawing)
    canvas = torch.stack([x.expand(1, 1, SIDE, SIDE), y.expand(1, 1, SIDE, SIDE)], -1).view(1, -1, 2)
    back = torch.linalg.inv_ex(h)[0]
    q = torch.cat([canvas, torch.ones_like(canvas[..., :1])], -1) @ back.transpose(1, 2)
    w = q[..., 2:]
    grid = (q[..., :2] / w.clamp_min(1e-3)).view(-1, SIDE, SIDE, 2) + bend.permute(0, 2, 3, 1)
    grid = torch.where(w.view(-1, SIDE, SIDE, 1) > 1e-3, grid, torch.full_like(grid, 9.0))
    # As much blur as the drawing is made smaller, so that thin strokes fade and don't break.
    smaller = (PIXELS / SIDE) / h[:, :2, :2].det().abs().sqrt().clamp(0.05, 2)
    soft = blur(drawing, (0.5 * (smaller - 0.7)).clamp(0.05, 2.6).view(-1, 1, 1, 1))
    mask = F.grid_sample(soft, grid, mode="bilinear", padding_mode="zeros", align_corners=False)
    # The grid looks up p in the design at h^-1(p) + bend(p); so a point q of the design lies where
    # h(q - bend(p)) is, with p to first order h(q).
    lying = through(h, points - bend_at(bend, through(h, points)))
    return mask, box_of(lying)


def worn(m, severity):
    """Stroke weight and patchy wear."""
    m = torch.sigmoid((m - between(m, 0.5 - 0.3 * severity, 0.5 + 0.15 * severity)) * 12)
    m = (m - torch.sigmoid(torch.tensor(-6.0))).clamp_min(0)
    patchy = noise(m, 9) * 0.8 + noise(m, 28) * 0.5 + between(m, 2.4 - 1.9 * severity, 4.5 - 1.5 * severity)
    return m * (1 - coin(m, 0.7 * severity) * (1 - torch.sigmoid(patchy * 3)))


def surface(like):
    """A material's texture, [n, 1, 192, 192] round 0: mottled, brushed, turned, woven, grained or pitted."""
    x, y = lines(like)
    at = lambda low, high: between(like, low, high)
    t = noise(like, 5) * at(0, 0.10) + noise(like, 16) * at(0, 0.06) + noise(like, 60) * at(0, 0.04)
    t = t + noise(like, SIDE) * at(0, 0.03)
    a = at(0, math.pi)
    along, across = x * torch.cos(a) + y * torch.sin(a), y * torch.cos(a) - x * torch.sin(a)
    kind = torch.randint(7, (like.shape[0], 1, 1, 1), device=like.device)
    strong = at(0.01, 0.11)
    brushed = F.interpolate(torch.randn(like.shape[0], 1, SIDE, 5, device=like.device), size=(SIDE, SIDE), mode="bilinear")
    brushed = torch.where(coin(like, 0.5) > 0, brushed, brushed.transpose(2, 3))
    r = ((x - at(-1.2, 1.2)) ** 2 + (y - at(-1.2, 1.2)) ** 2).sqrt()
    turned = torch.sin(r * at(40, 160) + noise(like, 4)) + torch.sin(r * at(15, 90)) + torch.sin(r * at(60, 200))
    thread = at(40, 230)
    woven = torch.sin(along * thread) * torch.sin(across * thread * at(0.8, 1.25)) * 1.6
    grain = torch.sin(across * at(10, 60) + noise(like, 3) * at(0.5, 4)) + noise(like, 120, 8) * 0.7
    pitted = -torch.sigmoid((noise(like, 70) - at(1.5, 2.3)) * 6) * 4 - torch.sigmoid((noise(like, 25) - 2.2) * 8) * 3
    for number, texture in ((1, brushed), (2, turned * 0.5), (3, woven), (4, grain * 0.7), (5, pitted)):
        t = t + texture * strong * (kind == number)
    return t


def shape(like, centre, half, angle, power):
    """Signed distance, about, from the edge of a superellipse: negative inside. [n, 1, 192, 192]"""
    x, y = lines(like)
    dx, dy = x - centre[:, 0].view(-1, 1, 1, 1), y - centre[:, 1].view(-1, 1, 1, 1)
    c, d = torch.cos(angle).view(-1, 1, 1, 1), torch.sin(angle).view(-1, 1, 1, 1)
    u = ((dx * c + dy * d) / half[:, 0].view(-1, 1, 1, 1)).abs().clamp_min(1e-4)
    v = ((dy * c - dx * d) / half[:, 1].view(-1, 1, 1, 1)).abs().clamp_min(1e-4)
    most, least = torch.maximum(u, v), torch.minimum(u, v)
    radius = most * (1 + (least / most) ** power) ** (1 / power)
    return (radius - 1) * half.amin(1).view(-1, 1, 1, 1)


def put_on(albedo, height, tone, distance, there, like):
    """Lays a thing over what is there: its tone and texture, a bevelled edge, rings along it, its shadow."""
    at = lambda low, high: between(like, low, high)
    inside = torch.sigmoid(-distance * at(40, 120)) * there
    shadow = torch.exp(-(distance.clamp_min(0) / at(0.01, 0.12)) ** 2) * at(0, 0.5) * (1 - inside) * there
    albedo = albedo * (1 - shadow)
    albedo = albedo * (1 - inside) + inside * (tone + surface(like))
    rim = torch.exp(-((distance + at(0, 0.05)) / at(0.008, 0.05)) ** 2) * there
    rings = torch.cos(distance * at(20, 110)) * torch.sigmoid((distance + at(0.08, 0.5)) * 40) * inside
    albedo = albedo + rim * at(-0.25, 0.25) * coin(like, 0.5) + rings * at(-0.12, 0.12) * coin(like, 0.15)
    height = height * (1 - 0.7 * inside) + rim * at(-3, 3) * coin(like, 0.5) + inside * at(-4, 4) * coin(like, 0.4)
    height = height + rings * at(0, 1.2) * coin(like, 0.2)
    return albedo, height


def ground_for(like, boxes, angle, shown):
    """What the mark is on, seen from above: albedo, height, and the tone under the mark."""
    n, device = like.shape[0], like.device
    at = scalars(n, device)
    tone = between(like, 0.06, 0.94)
    albedo = tone + surface(like)
    height = noise(like, 6) * between(like, 0, 1.2) + noise(like, 40) * between(like, 0, 0.25)
    height = height + noise(like, 110) * between(like, 0, 0.18) * coin(like, 0.4)
    middle = (boxes[:, :2] + boxes[:, 2:]) / 2
    half = (boxes[:, 2:] - boxes[:, :2]) / 2
    size = half.amax(1, keepdim=True).clamp_min(0.1)
    wander = lambda by: middle + (torch.rand(n, 2, device=device) * 2 - 1) * by
    for smallest, largest, probability, about in ((1.2, 5.0, 0.65, 0.5), (1.08, 1.7, 0.42, 0.05)):
        wide = torch.stack([at(smallest, largest), at(smallest, largest)], 1) * size
        round_one = (at(0, 1) < 0.35)[:, None]
        wide = torch.where(round_one, wide[:, :1].expand_as(wide), wide)
        power = torch.where(at(0, 1) < 0.5, torch.full_like(middle[:, 0], 2.0), at(3, 12)).view(-1, 1, 1, 1)
        turn = torch.where(at(0, 1) < 0.8, angle + at(-0.05, 0.05), at(-math.pi, math.pi))
        there = coin(like, probability)
        own = between(like, 0.06, 0.94)
        distance = shape(like, wander(size * about), wide, turn, power)
        albedo, height = put_on(albedo, height, own, distance, there, like)
        tone = torch.where((there > 0) & (distance_at(distance, middle) < 0), own, tone)
    return albedo, height, tone


def distance_at(distance, middle):
    there = F.grid_sample(distance, middle[:, None, None], padding_mode="border", align_corners=False)
    return there.view(-1, 1, 1, 1)


def things_beside(albedo, height, letters, boxes, angle):
    """What is in the photograph and is no mark: a scale bar, cut-off lettering, seams, specks."""
    like = albedo
    n, device = like.shape[0], like.device
    x, y = lines(like)
    at = lambda low, high: between(like, low, high)
    middle = ((boxes[:, :2] + boxes[:, 2:]) / 2).view(n, 2, 1, 1)
    half = ((boxes[:, 2:] - boxes[:, :2]) / 2).view(n, 2, 1, 1)
    # A scale bar below the mark, or above it, about as the mark lies or as the photograph is held.
    turn = torch.where(coin(like, 0.6) > 0, at(-0.12, 0.12), angle.view(-1, 1, 1, 1))
    c, d = torch.cos(turn), torch.sin(turn)
    side = torch.where(coin(like, 0.75) > 0, 1.0, -1.0)
    away = half.amax(1, keepdim=True) * (c * c + 0.2) + at(0.08, 0.35)
    u = (x - middle[:, :1] + at(-0.2, 0.2)) * c + (y - middle[:, 1:]) * d
    v = (y - middle[:, 1:]) * c - (x - middle[:, :1]) * d - side * away
    long, tall = at(0.25, 1.1), at(0.05, 0.12)
    bar = torch.sigmoid((long - u.abs()) * 90) * torch.sigmoid((tall - v.abs()) * 90) * coin(like, 0.22)
    pitch = at(0.03, 0.12)
    tick = torch.sigmoid((torch.cos(u / pitch * 2 * math.pi) - at(0.4, 0.8)) * 8)
    long_tick = torch.sigmoid((torch.cos(u / pitch * 0.4 * math.pi) - 0.9) * 30)
    upper = torch.sigmoid((-v - tall * (0.2 - 0.7 * long_tick)) * 60)
    figures = torch.sigmoid((noise(like, 48) - 0.6) * 9) * long_tick.roll(3, -1) * torch.sigmoid((v - tall * 0.2) * 60)
    blocks = torch.sigmoid(torch.sin(u / pitch * math.pi) * 9) * torch.sigmoid(v * 60)
    face = torch.where(coin(like, 0.75) > 0, (tick * upper + figures).clamp(0, 1), blocks)
    light, dark = at(0.75, 0.98), at(0.02, 0.2)
    over = coin(like, 0.5)
    drawn = torch.where(over > 0, light + (dark - light) * face, dark + (light - dark) * face)
    albedo = albedo * (1 - bar) + bar * drawn
    height = height * (1 - bar)
    # Lettering that the edge of something cuts: a strip of another design, small.
    albedo = albedo + letters * at(-0.4, 0.4) * coin(like, 0.25)
    height = height + letters * at(-3, 3) * coin(like, 0.12)
    for _ in range(2):
        a = at(0, math.pi)
        line = (x - at(-1, 1)) * torch.cos(a) + (y - at(-1, 1)) * torch.sin(a) + noise(like, 4) * at(0, 0.02)
        seam = torch.exp(-((line / at(0.005, 0.03)) ** 2))
        albedo = albedo + seam * at(-0.35, 0.35) * coin(like, 0.25)
        height = height + seam * at(-2.5, 2.5) * coin(like, 0.15)
    r = ((x - at(-1.4, 1.4)) ** 2 + (y - at(-1.4, 1.4)) ** 2).sqrt() - at(0.4, 1.8)
    foot = torch.exp(-((r / at(0.01, 0.06)) ** 2)) + torch.exp(-(((r - at(0.05, 0.2)) / at(0.01, 0.04)) ** 2))
    ring = coin(like, 0.2)
    return albedo + foot * ring * at(-0.25, 0.25), height + foot * ring * at(-3, 3)


def lit(albedo, height):
    """Diffuse and mirror-like light from one direction, and what a room looks like in a polished thing."""
    at = lambda low, high: between(albedo, low, high)
    dx = F.pad(height[..., 2:] - height[..., :-2], (1, 1, 0, 0))
    dy = F.pad(height[..., 2:, :] - height[..., :-2, :], (0, 0, 1, 1))
    nz = torch.rsqrt(dx * dx + dy * dy + 1)
    around, above = at(0, 2 * math.pi), at(0.4, 1.35)
    lx, ly, lz = torch.cos(around) * torch.cos(above), torch.sin(around) * torch.cos(above), torch.sin(above)
    facing = -dx * lx - dy * ly + lz
    shine = ((facing + 1) * nz * torch.rsqrt(2 + 2 * lz)).clamp(1e-4, 1) ** at(6, 60)
    metal = coin(albedo, 0.45)
    room = torch.sin(noise(albedo, 3) * 2 - dx * nz * at(1, 5) - dy * nz * at(1, 5) + at(0, 6.3))
    picture = albedo * ((facing * nz).clamp_min(0) * 0.85 / (0.3 + 0.7 * lz) + 0.15)
    return picture + (shine - 0.4).clamp_min(0) * at(0, 0.6) * metal + room * at(0, 0.22) * metal


def handled(picture, boxes, severity):
    """Fall-off, shadows, flash, scratches, things and fingers in front, shallow focus."""
    x, y = lines(picture)
    at = lambda low, high: between(picture, low, high)
    picture = picture * (1 + (x * at(-1, 1) + y * at(-1, 1)) * at(0, 0.4) * severity)
    a = at(0, 2 * math.pi)
    line = x * torch.cos(a) + y * torch.sin(a) + noise(picture, 4) * at(0, 0.12)
    picture = picture * (1 - torch.sigmoid((line - at(-0.3, 0.8)) * at(5, 50)) * at(0, 0.6) * coin(picture, 0.25))
    r = at(0.05, 0.35)
    flash = torch.exp(-((x - at(-1, 1)) ** 2 + (y - at(-1, 1)) ** 2) / (2 * r * r))
    picture = picture + flash * at(0, 0.9) * coin(picture, 0.25)
    for _ in range(2):
        a = at(0, math.pi)
        d = (x - at(-1, 1)) * torch.cos(a) + (y - at(-1, 1)) * torch.sin(a)
        scratch = torch.exp(-((d / at(0.006, 0.015)) ** 2))
        picture = picture + scratch * at(-0.4, 0.4) * coin(picture, 0.4 * severity)
    # Fingers and edges come in from the sides.
    for _ in range(2):
        a, far = at(0, 2 * math.pi), at(0.75, 1.35)
        u = x * torch.cos(a) + y * torch.sin(a) - far
        v = y * torch.cos(a) - x * torch.sin(a) - at(-0.6, 0.6)
        thick, tip = at(0.1, 0.3), at(0.1, 0.5)
        finger = torch.sigmoid((1 - (v / thick) ** 2 - ((-u).clamp_min(0) / tip) ** 2) * 10)
        skin = at(0.25, 0.85) * (1 - 0.3 * (v / thick).clamp(-1, 1)) + noise(picture, 40) * 0.02
        finger = finger * coin(picture, 0.13)
        picture = picture * (1 - finger) + finger * skin
    cx, cy, ex, ey = at(-1, 1), at(-1, 1), at(0.04, 0.2), at(0.04, 0.2)
    hidden = torch.sigmoid((1 - ((x - cx) / ex) ** 2 - ((y - cy) / ey) ** 2) * 8) * coin(picture, 0.2 * severity)
    picture = picture * (1 - hidden) + hidden * at(0, 1)
    # Sharp on a plane through the mark, more or less.
    middle = ((boxes[:, :2] + boxes[:, 2:]) / 2).view(-1, 2, 1, 1)
    a = at(0, 2 * math.pi)
    away = ((x - middle[:, :1]) * torch.cos(a) + (y - middle[:, 1:]) * torch.sin(a)).abs()
    share = ((away - at(0.1, 0.6)) * at(1, 4)).clamp(0, 1) * coin(picture, 0.35)
    soft = blur(blur(picture, between(picture, 1.5, 4)), between(picture, 1, 4))
    return picture * (1 - share) + soft * share


def cut_lettering(drawing, points, frame, size, severity, bend):
    """A strip across the middle of another design, 0..1: what a worn line of lettering leaves."""
    row = torch.arange(PIXELS, device=drawing.device).view(1, 1, -1, 1)
    strip = drawing * ((row >= 50) & (row < 74)).float()
    h, _ = settle(stance(len(drawing), drawing.device, severity)[0], points, frame * 1.2, size)
    return laid(strip, h, bend, points)[0]


def scenes(packed, hardest: float = 1.0) -> Scenes:
    """uint8 [n, 2048] -> n scenes, each of the design at its place; neighbours lend the other marks."""
    n, device = len(packed), packed.device
    drawing = unpack(packed)
    at = scalars(n, device)
    severity = hardest * torch.rand(n, 1, 1, 1, device=device)
    points = outline_points(drawing)
    frame = frames(n, device)
    low, high = math.log(0.12), math.log(0.95)
    size = torch.exp(low + (high - low) * at(0, 1) ** 0.75)
    h, angle = stance(n, device, severity)
    h, box = settle(h, points, frame, size)
    wide_bend, fine_bend = noise(drawing, 4, channels=2), noise(drawing, 9, channels=2)
    bend = (wide_bend * between(drawing, 0, 0.05) + fine_bend * between(drawing, 0, 0.015)) * severity
    mask, box = laid(drawing, h, bend, points)

    # A smaller second mark beside the first, where there is room for it.
    other, other_points = drawing.roll(1, 0), points.roll(1, 0)
    h2, angle2 = stance(n, device, severity)
    extent = (box[:, 2:] - box[:, :2]).amax(1)
    size2 = (extent / 2 * at(0.35, 0.8)).clamp_min(0.1)
    way = at(0, 2 * math.pi)
    outward = torch.stack([torch.cos(way), torch.sin(way)], 1)
    middle = (box[:, :2] + box[:, 2:]) / 2
    gap = (extent / 2 + size2) * 1.05
    h2, box2 = settle(h2, other_points, frame, size2, middle + outward * gap[:, None], middle + outward * (gap + 0.4)[:, None])
    mask2, box2 = laid(other, h2, bend, other_points)
    inside = ((box2[:, :2] > -frame) & (box2[:, 2:] < frame)).all(1)
    apart = ((box2[:, :2] > box[:, 2:]) | (box2[:, 2:] < box[:, :2])).any(1)
    first = (at(0, 1) >= NO_MARK).float()
    second = (inside & apart & (at(0, 1) < 0.35)).float() * first
    mask = mask * first.view(-1, 1, 1, 1)
    mask2 = mask2 * second.view(-1, 1, 1, 1)

    strip = cut_lettering(drawing.roll(2, 0), points.roll(2, 0), frame, size * at(0.3, 0.8), severity, bend)

    albedo, height, tone = ground_for(drawing, box, angle, first)
    albedo, height = things_beside(albedo, height, strip, box, angle)
    m = worn(mask, severity) + worn(mask2, severity)
    m = m.clamp(0, 1)
    relief = coin(m, 0.52)
    gap = between(m, 0.25 - 0.1 * severity, 0.75)
    lighter, darker = tone + gap, tone - gap
    light = ((torch.rand_like(tone) < 0.35) & (lighter < 1)) | (darker < 0)
    ink = torch.where(light, lighter, darker).clamp(0.02, 0.98) + noise(m, 20) * between(m, 0, 0.1) * severity
    printed = m * (1 - relief)
    albedo = albedo * (1 - printed) + ink * printed
    # Depth and softness of a relief go with the size of the mark.
    grown = (size.view(-1, 1, 1, 1) * 1.6).clamp(0.4, 1.3)
    edge = blur(m, between(m, 0.4, 2.0) * grown)
    dome = F.interpolate(F.avg_pool2d(m, 8), size=(SIDE, SIDE), mode="bicubic", align_corners=False)
    raised = torch.where(coin(m, 0.6) > 0, -1.0, 1.0)
    depth = edge * between(m, 2.8 - 1.2 * severity, 7) + dome * between(m, 0, 6) * coin(m, 0.3)
    height = height + depth * raised * relief * grown.sqrt()
    dirt = m * between(m, -0.05, 0.3) * coin(m, 0.5) + (m - edge) * between(m, -0.4, 0.4) * coin(m, 0.4)
    albedo = (albedo - dirt * relief).clamp(0.01, 1.1)

    picture = handled(lit(albedo, height), box, severity)
    picture = blur(picture, between(m, 0.1, 0.2 + 1.3 * severity))
    x, y = lines(m)
    visible = ((x.abs() < frame[:, 0].view(-1, 1, 1, 1)) & (y.abs() < frame[:, 1].view(-1, 1, 1, 1))).float()
    picture = picture.clamp_min(0)
    mean = (picture * visible).sum((1, 2, 3), keepdim=True) / visible.sum((1, 2, 3), keepdim=True)
    # The camera exposes for the middle of its scale, more or less.
    picture = picture * (between(m, 0.3, 0.7) / mean.clamp_min(0.03)) ** between(m, 0.4, 1)
    picture = picture + torch.randn_like(picture) * between(m, 0, 0.004 + 0.03 * severity)
    picture = picture.clamp(0, 1) ** torch.exp(between(m, -0.35, 0.35))

    boxes = torch.stack([box, box2], 1)
    edge = torch.cat([frame, frame], 1)[:, None]
    boxes = (torch.maximum(torch.minimum(boxes, edge), -edge) + 1) * (SIDE / 2)
    return Scenes(picture.nan_to_num(0.5) * visible, visible, boxes, torch.stack([first, second], 1), frame)


def main() -> None:
    from PIL import Image

    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("out")
    parser.add_argument("--designs", required=True)
    parser.add_argument("--split", default="test")
    parser.add_argument("--count", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=7)
    options = parser.parse_args()
    torch.manual_seed(options.seed)
    packed = load(os.path.join(options.designs, f"{options.split}.bin.gz"), "cpu")[: options.count]
    os.makedirs(options.out, exist_ok=True)
    listed = []
    for part in packed.split(100):
        made = scenes(part)
        for picture, boxes, shown, frame in zip(made.pictures, made.boxes, made.shown, made.frame):
            # The photograph is the visible part of the canvas, in whole pixels.
            wide, high = (int(round(float(v) * SIDE / 2)) * 2 for v in frame)
            left, top = (SIDE - wide) // 2, (SIDE - high) // 2
            grey = (picture[0, top : top + high, left : left + wide] * 255).round().byte().numpy()
            name = f"s{len(listed) + 1:04d}.webp"
            Image.fromarray(grey).save(os.path.join(options.out, name), quality=92)
            kept = [b for b, s in zip(boxes.tolist(), shown.tolist()) if s]
            listed.append({"file": name, "boxes": [
                [round(b[0] - left, 2), round(b[1] - top, 2), round(b[2] - b[0], 2), round(b[3] - b[1], 2)] for b in kept
            ]})
    with open(os.path.join(options.out, "regions.json"), "w") as file:
        file.write("[\n" + ",\n".join(json.dumps(entry) for entry in listed) + "\n]\n")
    print(f"{options.out}: {len(listed)} photographs")


if __name__ == "__main__":
    main()
