"""Fits how similarities become probabilities, and measures it on photographs nothing was fitted on.

    python3 calibrate.py VALIDATION.jsonl --test "NAME=FILE[,FILE...]" [--test ...] [--date YYYY-MM-DD]

The files are written by `npm run evaluate -- --features`. What is fitted is a conditional logit (one
of the entries or "none" is right), by maximum likelihood with SciPy's L-BFGS; the formula is that
of app/_core/similarity/chances.ts. Writes ../model/calibration.json. The first --test gives the
reliability table. `--likeness` first refits the likeness thresholds in ../model/model.json, by the
same file: what answers without a calibration are worded by.
"""

import argparse
import datetime
import json
import os

import numpy as np
from scipy.optimize import minimize
from scipy.special import expit, log_softmax
from sklearn.linear_model import LogisticRegression
from sklearn.metrics import roc_auc_score

MODEL = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "model")
BINS = 15
# Candidates of a query that the fit looks at; what lies beyond weighs nothing.
BEST = 120
# Keeps coefficients finite where the data would leave them open; far too weak to move the others.
RIDGE = 1e-9
DESCRIBED = ("Rendered photographs of {queries:,} invented designs that the network never saw, at severities drawn evenly "
             "from 0.3 to 1.0 and any rotation, each against references drawn at random; half of them of marks that "
             "no entry shows.")


class Asked:
    """Queries as arrays: rows are queries, columns candidates, the nearest first."""

    def __init__(self, paths):
        rows, self.model = [], None
        for path in paths:
            with open(path) as file:
                model = json.loads(next(file))["model"]
                if self.model not in (None, model):
                    raise ValueError(f"{path}: must be of the model {self.model}. Received {model}")
                self.model = model
                rows += [json.loads(line) for line in file]
        n = len(rows)
        self.queries = len({row["query"] for row in rows})
        self.similarity = np.full((n, BEST), -np.inf)
        self.logs = np.zeros((n, BEST))
        self.pair = np.full((n, BEST), np.nan)
        for i, row in enumerate(rows):
            s, photographs, pair = (np.array(x, dtype=float) for x in zip(*row["candidates"]))
            k = min(len(s), BEST)
            self.similarity[i, :k], self.logs[i, :k], self.pair[i, :k] = s[:k], np.log(photographs[:k]), pair[:k]
        self.entries = np.array([row["entries"] for row in rows])
        self.photographs = np.array([row["photographs"] for row in rows])
        self.present = np.array([row["present"] for row in rows])
        self.right = np.array([-1 if r["right"] is None or r["right"] >= BEST else r["right"] for r in rows])

    def __len__(self):
        return len(self.entries)


def utilities(asked, middle, paired):
    """Features of each candidate [n, BEST, k] and of "none" [n, 2], and which candidates there are."""
    there = np.isfinite(asked.similarity)
    x = np.where(there, asked.similarity - middle, 0)
    columns = [x, x * x, asked.logs]
    if paired:
        columns += [np.nan_to_num(asked.pair), np.isnan(asked.pair).astype(float)]
    none = np.stack([np.ones(len(asked)), np.log(asked.entries)], 1)
    return np.stack(columns, 2), none, there


def log_chances(parameters, features, none, there):
    """Log-probabilities [n, 1 + BEST]: of "none", then of each candidate."""
    k = features.shape[2]
    odds = np.where(there, features @ parameters[:k], -np.inf)
    return log_softmax(np.concatenate([(none @ parameters[k:])[:, None], odds], 1), axis=1)


def fit(asked, paired):
    middle = round(float(asked.similarity[:, 0].mean()), 4)
    features, none, there = utilities(asked, middle, paired)
    # A mark that is in the reference, but not among the candidates, is no evidence for "none".
    use = ~(asked.present & (asked.right < 0))
    features, none, there = features[use], none[use], there[use]
    answer = asked.right[use] + 1
    rows, k = np.arange(len(answer)), features.shape[2]

    def loss(parameters):
        logs = log_chances(parameters, features, none, there)
        excess = np.exp(logs)
        excess[rows, answer] -= 1
        gradient = np.concatenate([np.einsum("nb,nbk->k", excess[:, 1:], features), excess[:, 0] @ none])
        return (-logs[rows, answer].mean() + RIDGE * parameters @ parameters,
                gradient / len(rows) + 2 * RIDGE * parameters)

    start = np.zeros(k + 2)
    start[0] = 50
    found = minimize(loss, start, jac=True, method="L-BFGS-B", options={"maxiter": 2000, "maxfun": 4000})
    if not found.success:
        raise RuntimeError(f"the fit did not settle: {found.message}")
    p = [float(f"{x:.6g}") for x in found.x]
    curve = {"similarity": {"slope": p[0], "bend": p[1], "middle": middle}, "photographs": p[2],
             "pairScore": p[3] if paired else 0, "unpaired": p[4] if paired else 0,
             "none": {"constant": p[k], "entries": p[k + 1]}}
    return curve, found.fun


def chances(asked, curve, paired):
    similarity, at_none = curve["similarity"], curve["none"]
    slope, bend = similarity["slope"], similarity["bend"]
    features, none, there = utilities(asked, similarity["middle"], paired)
    if bend:
        # Level where the curve would turn back.
        level = np.maximum if bend > 0 else np.minimum
        features[..., 0] = np.where(there, level(features[..., 0], -slope / (2 * bend)), 0)
        features[..., 1] = features[..., 0] ** 2
    of_entry = [slope, bend, curve["photographs"]] + ([curve["pairScore"], curve["unpaired"]] if paired else [])
    of_none = [at_none[name] for name in ("constant", "entries")]
    probabilities = np.exp(log_chances(np.array(of_entry + of_none), features, none, there))
    return probabilities[:, 1:], probabilities[:, 0]


def table(probability, right):
    """Bins ((m - 1) / 15, m / 15], as ml/evaluate/reliability.ts has them."""
    place = np.clip(np.ceil(probability * BINS) - 1, 0, BINS - 1).astype(int)
    bins = []
    for b in range(BINS):
        these = place == b
        mean = lambda values: round(float(values[these].mean()), 4) if these.any() else None
        bins.append({"count": int(these.sum()), "probability": mean(probability), "right": mean(right)})
    return bins


def calibration_error(probability, right) -> float:
    bins = table(probability, right)
    gaps = [b["count"] * abs(b["probability"] - b["right"]) for b in bins if b["count"]]
    return round(sum(gaps) / len(probability), 4)


HOW = ("Cosine of the best reference over the turns of the query. A logistic curve of 'the best match is right' against "
       "that cosine, on what the probabilities are fitted on (ml/train/calibrate.py --likeness). It crosses 0.97 at "
       "veryClose, 0.75 at close, 0.5 at noneBelow and 0.25 at some. Not calibrated probabilities: on real photographs "
       "and with other numbers of references they move.")


def fit_likeness(asked) -> dict:
    """The cosines at which a logistic curve of "the nearest is right" crosses what the words stand for."""
    best, right = asked.similarity[:, :1], asked.right == 0
    middle = best.mean()
    # Practically unpenalised: cosines are crowded, so their coefficient is large.
    curve = LogisticRegression(C=1e9, max_iter=10000).fit((best - middle) * 100, right)
    slope, constant = float(curve.coef_[0, 0]) * 100, float(curve.intercept_[0])
    at = lambda p: round(float(middle) + (float(np.log(p / (1 - p))) - constant) / slope, 3)
    return {"veryClose": at(0.97), "close": at(0.75), "some": at(0.25), "noneBelow": at(0.5), "how": HOW}


def write_likeness(likeness) -> None:
    path = os.path.join(MODEL, "model.json")
    with open(path) as file:
        facts = json.load(file)
    facts["likeness"] = likeness
    with open(path, "w") as file:
        json.dump(facts, file, indent=2)
        file.write("\n")
    print(json.dumps({name: value for name, value in likeness.items() if name != "how"}))


def measure(name, asked, curve, paired, likeness):
    of, none = chances(asked, curve, paired)
    first = of.argmax(1)
    probability, right = of[np.arange(len(of)), first], first == asked.right
    step = np.log(3) / (likeness["close"] - likeness["noneBelow"])
    before = expit(step * (asked.similarity[:, 0] - likeness["noneBelow"]))
    row = {"on": name, "present": int(asked.present.sum()), "absent": int((~asked.present).sum()),
           "photographs": int(asked.photographs.max()), "eceBefore": calibration_error(before, asked.right == 0),
           "ece": calibration_error(probability, right), "eceNone": calibration_error(none, ~asked.present)}
    area = roc_auc_score(asked.present, 1 - none) if 0 < row["absent"] < len(asked) else float("nan")
    print(json.dumps({**row, "recall1": round(float(right[asked.present].mean()), 4), "auroc": round(area, 4)}))
    return row, table(probability, right)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("validation", nargs="+")
    parser.add_argument("--test", action="append", required=True, metavar="NAME=FILE,...")
    parser.add_argument("--date", default=datetime.date.today().isoformat())
    parser.add_argument("--likeness", action="store_true")
    parser.add_argument("--out", default=os.path.join(MODEL, "calibration.json"))
    options = parser.parse_args()
    asked = Asked(options.validation)
    if options.likeness:
        write_likeness(fit_likeness(asked))
    with open(os.path.join(MODEL, "model.json")) as file:
        likeness = json.load(file)["likeness"]
    paired = not np.isnan(asked.pair).all()
    plain, loss = fit(asked, False)
    reranked = fit(asked, True)[0] if paired else None
    print(json.dumps({"plain": plain, "reranked": reranked, "loss": round(float(loss), 5)}))
    rows, reliability = [], None
    for each in options.test:
        name, _, files = each.partition("=")
        row, bins = measure(name, Asked(files.split(",")), reranked or plain, paired, likeness)
        rows.append(row)
        reliability = reliability or bins
    written = {"model": asked.model, "date": options.date,
               "fittedOn": {"what": DESCRIBED.format(queries=asked.queries), "queries": asked.queries,
                            "fewest": int(asked.photographs.min()), "most": int(asked.photographs.max())},
               "plain": plain, "reranked": reranked, "measured": rows, "reliability": reliability}
    with open(options.out, "w") as file:
        json.dump(written, file, indent=2)
        file.write("\n")


if __name__ == "__main__":
    main()
