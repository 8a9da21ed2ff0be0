package org.axlecause.pages;

import org.axlecause.policy.PolicyViews.PolicyView;

/**
 * A policy in the list of all.
 *
 * @param policy the policy
 * @param means what it is for; empty where it was never published
 */
public record PolicyInList(PolicyView policy, String means) {}
