"""What the firm brings, as dated data: equipment, rules, operator profiles and usual times."""
