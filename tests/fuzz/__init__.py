"""The fuzz: strange inputs all the way from text to reply, and the laws that every answer keeps.

    python -m tests.fuzz                 200,000 inputs
    python -m tests.fuzz 5000 --seed 7   fewer, from another seed
"""
