"""The benchmark: how long people wait, as ratios to what the libraries below need themselves.

    python -m tests.benchmark            every figure, some two minutes
    python -m tests.benchmark --quick    fewer repetitions, for a first look
    python -m tests.benchmark --write    every figure, and the table put into README.md
"""
