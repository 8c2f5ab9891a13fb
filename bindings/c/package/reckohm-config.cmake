# find_package(reckohm) gives two imported targets: reckohm::shared and reckohm::static.
# They lie where this file lies, so the prefix may be moved as a whole.

get_filename_component(_reckohm_prefix "${CMAKE_CURRENT_LIST_DIR}/../../.." ABSOLUTE)

if(NOT TARGET reckohm::shared)
  add_library(reckohm::shared SHARED IMPORTED)
  set_target_properties(reckohm::shared PROPERTIES
    IMPORTED_LOCATION "${_reckohm_prefix}/lib/libreckohm.so"
    IMPORTED_SONAME "libreckohm.so.0"
    INTERFACE_INCLUDE_DIRECTORIES "${_reckohm_prefix}/include")
endif()

if(NOT TARGET reckohm::static)
  add_library(reckohm::static STATIC IMPORTED)
  set_target_properties(reckohm::static PROPERTIES
    IMPORTED_LOCATION "${_reckohm_prefix}/lib/libreckohm.a"
    IMPORTED_LINK_INTERFACE_LANGUAGES "C"
    INTERFACE_LINK_LIBRARIES "gcc_s;c;m"
    INTERFACE_INCLUDE_DIRECTORIES "${_reckohm_prefix}/include")
endif()

set(reckohm_FOUND TRUE)
unset(_reckohm_prefix)
