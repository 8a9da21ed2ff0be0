package org.axlecause.shared;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.ext.Provider;

/** Puts the gate before every route. */
@Provider
class GateFilter implements ContainerRequestFilter {

    private final Gate gate;

    @Context
    @SuppressWarnings("NullAway.Init")
    ResourceInfo resource;

    GateFilter(Gate gate) {
        this.gate = gate;
    }

    @Override
    public void filter(ContainerRequestContext request) {
        gate.admit(
                request.getHeaderString(HttpHeaders.AUTHORIZATION),
                resource.getResourceClass(),
                resource.getResourceMethod());
    }
}
