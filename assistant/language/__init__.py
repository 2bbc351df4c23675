"""Language: words to query, solution to sentences."""
