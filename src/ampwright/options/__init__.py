"""Every option a home allows, verified in every home the facts allow, compared and explained."""
