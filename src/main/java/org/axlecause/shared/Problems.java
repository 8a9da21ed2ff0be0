package org.axlecause.shared;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.ConstraintViolationException;
import jakarta.validation.ElementKind;
import jakarta.validation.Path;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.axlecause.shared.RefusedException.Reason;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;
import org.jspecify.annotations.Nullable;

/** Turns everything that goes wrong in a request into one problem document; a fault shows an id and nothing else. */
class Problems {

    private static final Logger LOG = Logger.getLogger(Problems.class);
    private static final int CLIENT_ERROR = 400;
    private static final int SERVER_ERROR = 500;
    private static final String RETRY_SECONDS = "2";

    @ServerExceptionMapper
    Response refused(RefusedException exception, UriInfo uri) {
        return answer(exception.problem(), uri).build();
    }

    @ServerExceptionMapper
    Response http(WebApplicationException exception, UriInfo uri) {
        Response original = exception.getResponse();
        int status = original.getStatus();
        if (status < CLIENT_ERROR) {
            return original;
        }
        if (status >= SERVER_ERROR) {
            return fault(exception, uri);
        }
        if (exception.getCause() instanceof JsonProcessingException json) {
            return json(json, uri);
        }
        return answer(problemOf(status, uri), uri).build();
    }

    @ServerExceptionMapper
    Response json(JsonProcessingException exception, UriInfo uri) {
        JsonLocation location = exception.getLocation();
        String where =
                location == null ? "" : " at line " + location.getLineNr() + ", column " + location.getColumnNr();
        Problem.Cause cause = new Problem.Cause(pointer(exception), exception.getOriginalMessage());
        return answer(
                        RefusedException.malformed("The JSON can't be read" + where + ".", List.of(cause))
                                .problem(),
                        uri)
                .build();
    }

    @ServerExceptionMapper
    Response mismatched(MismatchedInputException exception, UriInfo uri) {
        return json(exception, uri);
    }

    @ServerExceptionMapper
    Response invalid(ConstraintViolationException exception, UriInfo uri) {
        List<Problem.Cause> causes = exception.getConstraintViolations().stream()
                .map(violation -> new Problem.Cause(pointer(violation), text(violation)))
                .sorted(Comparator.comparing(Problem.Cause::pointer).thenComparing(Problem.Cause::text))
                .toList();
        return answer(RefusedException.invalidPayload(causes).problem(), uri).build();
    }

    @ServerExceptionMapper
    Response database(DatabaseException exception, UriInfo uri) {
        if (!exception.isUnavailable()) {
            return fault(exception, uri);
        }
        LOG.warn("The database can't be reached", exception);
        Problem problem = RefusedException.because(
                        Reason.UNAVAILABLE,
                        "The database can't be reached just now; nothing was stored. Send it again.")
                .problem();
        return answer(problem, uri)
                .header(HttpHeaders.RETRY_AFTER, RETRY_SECONDS)
                .build();
    }

    @ServerExceptionMapper
    Response fault(Throwable exception, UriInfo uri) {
        String id = UUID.randomUUID().toString();
        LOG.errorf(exception, "Fault %s at %s", id, uri.getRequestUri().getRawPath());
        Problem problem = Problem.of(
                        SERVER_ERROR,
                        "fault",
                        "The service has failed",
                        "Nothing that you can mend. Tell the operator this id: " + id,
                        List.of())
                .about("urn:uuid:" + id);
        return Response.status(SERVER_ERROR)
                .type(Problem.MEDIA_TYPE)
                .entity(text(problem))
                .build();
    }

    /** What is said about a refusal that says nothing itself. */
    static Problem problemOf(int status, UriInfo uri) {
        Reason reason = reason(status);
        if (reason == null) {
            return Problem.of(status, "refused", "The request is refused", null, List.of());
        }
        String path = uri.getRequestUri().getRawPath();
        String detail =
                switch (reason) {
                    case NOT_FOUND ->
                        path.startsWith("/v1/")
                                ? "Nothing is served at " + path + ". /q/openapi lists what is."
                                : "There is no page " + path + ".";
                    case METHOD_NOT_ALLOWED ->
                        path + " exists, but not for this method; OPTIONS lists those that it has.";
                    case UNSUPPORTED_FORMAT ->
                        path + " doesn't read this Content-Type; /q/openapi lists those that it reads.";
                    case NOT_ACCEPTABLE ->
                        path + " has no answer in the formats of Accept; /q/openapi lists those that it has.";
                    case PRECONDITION_FAILED ->
                        "If-Match names another version than the present one. Read it again, then decide.";
                    default -> null;
                };
        return Problem.of(status, reason.code(), reason.title(), detail, List.of());
    }

    private static @Nullable Reason reason(int status) {
        for (Reason reason : Reason.values()) {
            if (reason.status() == status) {
                return reason;
            }
        }
        return null;
    }

    private static Response.ResponseBuilder answer(Problem problem, UriInfo uri) {
        Problem told =
                problem.instance() == null ? problem.about(uri.getRequestUri().getRawPath()) : problem;
        Response.ResponseBuilder answer =
                Response.status(problem.status()).type(Problem.MEDIA_TYPE).entity(text(told));
        return problem.status() == Reason.NOT_AUTHENTICATED.status()
                ? answer.header(HttpHeaders.WWW_AUTHENTICATE, "Bearer")
                : answer;
    }

    private static String text(Problem problem) {
        try {
            return Json.mapper().writeValueAsString(problem);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("A problem document is plain JSON", e);
        }
    }

    private static String text(ConstraintViolation<?> violation) {
        Object value = violation.getInvalidValue();
        return violation.getMessage() + (value == null ? "" : ", but is " + value);
    }

    /** Without the names of methods and body parameters, which are ours and may change. */
    private static String pointer(ConstraintViolation<?> violation) {
        StringBuilder pointer = new StringBuilder();
        for (Path.Node node : violation.getPropertyPath()) {
            if (node.getKind() == ElementKind.METHOD || node.getKind() == ElementKind.PARAMETER) {
                continue;
            }
            if (node.getIndex() != null) {
                pointer.append('/').append(node.getIndex());
            } else if (node.getKey() != null) {
                pointer.append('/').append(escaped(node.getKey().toString()));
            }
            if (node.getKind() == ElementKind.PROPERTY) {
                pointer.append('/').append(escaped(node.getName()));
            }
        }
        return pointer.toString();
    }

    private static String pointer(JsonProcessingException exception) {
        if (!(exception instanceof JsonMappingException mapping)) {
            return "";
        }
        StringBuilder pointer = new StringBuilder();
        for (JsonMappingException.Reference reference : mapping.getPath()) {
            pointer.append('/')
                    .append(
                            reference.getFieldName() == null
                                    ? Integer.toString(reference.getIndex())
                                    : escaped(reference.getFieldName()));
        }
        return pointer.toString();
    }

    private static String escaped(String name) {
        return name.replace("~", "~0").replace("/", "~1");
    }
}
