package org.axlecause.shared;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.ext.Provider;
import java.lang.annotation.Annotation;

/** Gives words to refusals that come without any, such as failed preconditions. */
@Provider
class BareRefusals implements ContainerResponseFilter {

    private static final int CLIENT_ERROR = 400;
    private static final MediaType PROBLEM = MediaType.valueOf(Problem.MEDIA_TYPE);

    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext answer) {
        if (answer.getStatus() >= CLIENT_ERROR && !answer.hasEntity()) {
            Problem problem = Problems.problemOf(answer.getStatus(), request.getUriInfo());
            answer.setEntity(
                    Json.text(problem.about(request.getUriInfo().getRequestUri().getRawPath())),
                    new Annotation[0],
                    PROBLEM);
        }
    }
}
