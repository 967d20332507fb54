#pragma once

#include <string>

namespace seamtakt {

/// An ext4 image in a file, mounted on a folder while this lives; needs root. std::system_error where it
/// can't be mounted.
class MountedImage {
 public:
  MountedImage(const std::string& image, const std::string& folder);
  ~MountedImage();
  MountedImage(const MountedImage&) = delete;
  MountedImage& operator=(const MountedImage&) = delete;

 private:
  std::string folder_;
};

}  // namespace seamtakt
