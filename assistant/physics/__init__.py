"""Pure functions of numbers: SI lengths and times, f-numbers, ISO arithmetic, stops.

Nothing here knows a word, a setting or a state. Powers are fractions of full; `stops` are
signed, plus meaning more exposure.
"""
