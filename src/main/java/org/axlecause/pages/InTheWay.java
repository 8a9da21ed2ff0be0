package org.axlecause.pages;

import java.util.List;

/**
 * What may stand in the way of a step.
 *
 * @param reference reference of the case
 * @param where the place in words
 * @param place axle and side as a form sends them; empty for the whole vehicle
 * @param axles axles to choose a wheel of; none where the step tells the wheel
 * @param form id of the entry that a tap makes
 * @param obstacles what may be met; the code is part and state
 */
public record InTheWay(
        String reference,
        String where,
        String place,
        List<CaseView.AxleView> axles,
        String form,
        List<CaseView.Option> obstacles) {}
