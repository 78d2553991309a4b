RULES = {}
