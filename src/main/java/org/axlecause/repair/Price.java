package org.axlecause.repair;

/**
 * What something costs in one currency.
 *
 * @param net amount without tax
 * @param tax tax on it
 * @param gross amount with tax
 */
public record Price(Amount net, Amount tax, Amount gross) {}
